import { useState } from 'react'

/** Texts to take along, each by a button; says when one was copied, or why not. */
export function CopyRow({
  choices,
}: {
  readonly choices: readonly { readonly words: string; readonly make: (() => string) | null }[]
}) {
  const [told, setTold] = useState('')
  return (
    <>
      <div className="acts-row">
        {choices.map(({ words, make }) => (
          <button
            key={words}
            type="button"
            className="btn"
            disabled={make === null}
            onClick={() => {
              if (make)
                void navigator.clipboard.writeText(make()).then(
                  () => setTold(`${words}: copied.`),
                  () => setTold('This browser does not let a page copy. Choose the figures and copy them by hand.'),
                )
            }}
          >
            {words}
          </button>
        ))}
      </div>
      <p className="note" role="status">
        {told}
      </p>
    </>
  )
}
