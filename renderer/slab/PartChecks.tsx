import type { Id } from '../../shared/document/primitives'

/** Edges or corners of one shape, each ticked by its letters: several are chosen without pointing. */
export function PartChecks({
  name,
  parts,
  chosen,
  onSet,
}: {
  readonly name: string
  readonly parts: readonly (readonly [Id, string])[]
  readonly chosen: readonly Id[]
  /** In the order they were ticked. */
  readonly onSet: (chosen: readonly Id[]) => void
}) {
  return (
    <fieldset className="part-checks">
      <legend>{name}</legend>
      {parts.map(([id, words]) => (
        <label key={id} className="check-field">
          <input
            type="checkbox"
            checked={chosen.includes(id)}
            onChange={({ target }) => onSet(target.checked ? [...chosen, id] : chosen.filter(each => each !== id))}
          />
          {words}
        </label>
      ))}
    </fieldset>
  )
}
