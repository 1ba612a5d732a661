import { setCornerRadius } from '../../../core/document/commands/setCornerRadius'
import type { Path } from '../../../shared/document/path'
import type { UnitSystem } from '../../../shared/document/site'
import { cornerLetter } from '../../editor/cornerNames'
import { MeasureField } from '../MeasureField'
import { useRun } from '../useRun'

/** How one corner of a path is rounded; zero is sharp. */
export function CornerRadius({
  path,
  index,
  units,
}: {
  readonly path: Path
  readonly index: number
  readonly units: UnitSystem
}) {
  const run = useRun()
  const { id, roundM } = path.vertices[index]!
  return (
    <MeasureField
      label={`Corner ${cornerLetter(index)}, radius`}
      lengthM={roundM ?? 0}
      units={units}
      onSet={value =>
        value < 0 ? 'A radius is zero or more.' : run('corner radius', setCornerRadius(id, value || undefined))
      }
    />
  )
}

/** More corners than this are rounded on the plan. */
const mostCorners = 16

/** Every corner of a path that has few. */
export function CornerRadii({ path, units }: { readonly path: Path; readonly units: UnitSystem }) {
  return path.vertices.length > mostCorners
    ? null
    : path.vertices.map(({ id }, index) => <CornerRadius key={id} path={path} index={index} units={units} />)
}
