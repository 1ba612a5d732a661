import { useState } from 'react'

/** Which page of a PDF becomes the picture; stays, so that another page may be taken. */
export function PdfPageForm({
  pages,
  onTake,
}: {
  readonly pages: number
  readonly onTake: (page: number) => Promise<void>
}) {
  const [page, setPage] = useState(1)
  const [isDrawing, setDrawing] = useState(false)
  const take = async () => {
    setDrawing(true)
    await onTake(page)
    setDrawing(false)
  }
  return (
    <>
      <label className="measure wide">
        <span>Page of the PDF</span>
        <select value={page} onChange={event => setPage(Number(event.target.value))}>
          {Array.from({ length: pages }, (_, i) => i + 1).map(number => (
            <option key={number} value={number}>
              Page {number} of {pages}
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        className="btn"
        aria-disabled={isDrawing || undefined}
        onClick={() => (isDrawing ? undefined : void take())}
      >
        {isDrawing ? 'Drawing the page…' : 'Take this page'}
      </button>
    </>
  )
}
