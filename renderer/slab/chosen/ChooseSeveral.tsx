import type { Id } from '../../../shared/document/primitives'
import { useSession } from '../../app/session'
import { PartChecks } from '../PartChecks'

/** More corners or edges of the same shape than the one that is chosen. */
export function ChooseSeveral({
  what,
  parts,
  chosen,
}: {
  /** "edges". */
  readonly what: string
  readonly parts: readonly (readonly [Id, string])[]
  readonly chosen: readonly Id[]
}) {
  const { view } = useSession()
  return (
    <details className="wide">
      <summary>Choose several {what}</summary>
      <PartChecks
        name={`Chosen ${what}`}
        parts={parts}
        chosen={chosen}
        // One stays: with none of them the form would be gone under the hand.
        onSet={ids => {
          if (ids.length > 0) view.setState({ selection: ids })
        }}
      />
    </details>
  )
}
