import { useState } from 'react'
import { parseLength } from '../../../core/units/parseLength'
import type { Site } from '../../../shared/document/site'
import { Fault } from '../Fault'

/** On an empty sheet the first two points are a line of known length. */
export function BaseLine({ site, onSet }: { readonly site: Site; readonly onSet: (lengthM: number) => void }) {
  const [text, setText] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const set = () => {
    const read = parseLength(text, site.units)
    if (!read.ok) setFault(read.error.message)
    else if (read.value <= 0) setFault('Type a length greater than zero.')
    else onSet(read.value)
  }
  return (
    <div className="fields">
      <p className="told">
        Two known points are needed. Type the tape between the first two; they become a line across the sheet.
      </p>
      <label className="measure">
        <span>First to second point</span>
        <input
          type="text"
          autoComplete="off"
          aria-invalid={fault !== null || undefined}
          value={text}
          onChange={event => {
            setText(event.target.value)
            setFault(null)
          }}
          onKeyDown={event => {
            if (event.key === 'Enter') set()
          }}
        />
      </label>
      <button type="button" className="btn main" onClick={set}>
        Set both points
      </button>
      <Fault words={fault} />
    </div>
  )
}
