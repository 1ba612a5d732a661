import { useEffect, useState } from 'react'
import { useView } from '../app/session'
import type { ListedSheet, SheetPicture } from './sheetList'
import { withLetters } from './sheetPictures'
import { useSheets } from './useSheets'

/** The pages of the chosen sheets, one under the other, as they print. */
export function SheetPages() {
  const sheets = useSheets()
  const leftOut = useView(state => state.leftOut)
  if (!sheets) return <p className="sheet-wait">Sheets: working</p>
  const shown = sheets.list.sheets.filter(({ id }) => !leftOut.includes(id))
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolled region is moved by keys
    <section className="sheet-pages" aria-label="Pages" tabIndex={0}>
      {shown.length === 0 ? <p>No sheet is chosen.</p> : null}
      {shown.map(sheet => (
        <Page key={sheet.id} sheet={sheet} />
      ))}
    </section>
  )
}

function Page({ sheet }: { readonly sheet: ListedSheet }) {
  return (
    <figure className="sheet-page" id={`page-${sheet.id}`}>
      {sheet.pages.map(page => (
        <PagePicture key={page.id} picture={page} />
      ))}
      <figcaption>{sheet.name}</figcaption>
    </figure>
  )
}

export function PagePicture({ picture }: { readonly picture: SheetPicture }) {
  const [address, setAddress] = useState<string | null>(null)
  useEffect(() => {
    let made: string | null = null
    let isGone = false
    void withLetters(picture.svg).then(svg => {
      if (isGone) return
      made = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))
      setAddress(made)
    })
    return () => {
      isGone = true
      if (made) URL.revokeObjectURL(made)
    }
  }, [picture.svg])
  if (!address) return <p className="sheet-tables">Working</p>
  return <img src={address} alt={picture.name} width={picture.widthPt} height={picture.heightPt} />
}
