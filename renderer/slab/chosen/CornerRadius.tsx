import { setCircleRadius } from '../../../core/document/commands/setCircleRadius'
import { setCornerRadius } from '../../../core/document/commands/setCornerRadius'
import { resolvePath } from '../../../core/geometry/resolvePath'
import { outlineDimensions } from '../../../core/reports/dimensions'
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

/** Every corner of a path that has few; of a circle, which has none, how far across it is. */
export function CornerRadii({ path, units }: { readonly path: Path; readonly units: UnitSystem }) {
  const run = useRun()
  const [circle] = outlineDimensions(resolvePath(path, path.id).ring)
  if (circle?.kind === 'arc' && circle.wholeCircle)
    return (
      <MeasureField
        label="Across"
        lengthM={2 * circle.radiusM}
        units={units}
        onSet={value => run('circle', setCircleRadius(circle.edgeIds[0]!, value / 2))}
      />
    )
  return path.vertices.length > mostCorners
    ? null
    : path.vertices.map(({ id }, index) => <CornerRadius key={id} path={path} index={index} units={units} />)
}
