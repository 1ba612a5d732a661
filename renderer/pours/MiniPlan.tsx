import type { CurveRegion } from '../../core/geometry/curve'
import { flattenRing } from '../../core/geometry/flattenRing'
import type { Pt } from '../../shared/document/primitives'
import { labelSpot } from '../editor/layers/drawPours'

const size = 84
/** More pours than this are drawn without their numbers. */
const mostNumbers = 9

/** A split at thumbnail size: each pour its tint and number. */
interface MiniSplit {
  readonly pours: readonly { readonly region: CurveRegion; readonly areaM2: number; readonly number?: string }[]
  readonly joints: readonly { readonly from: Pt; readonly to: Pt }[]
}

export function MiniPlan({ region, proposal }: { readonly region: CurveRegion; readonly proposal: MiniSplit }) {
  const ring = flattenRing(region.outer, 0.02)
  const xs = ring.map(([x]) => x)
  const ys = ring.map(([, y]) => y)
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const scale = (size - 4) / Math.max(maxX - minX, maxY - minY, 1e-6)
  const at = ([x, y]: readonly [number, number]) =>
    `${(2 + (x - minX) * scale).toFixed(1)} ${(2 + (maxY - y) * scale).toFixed(1)}`
  const path = (shape: CurveRegion) =>
    [shape.outer, ...shape.holes].map(each => `M${flattenRing(each, 0.02).map(at).join('L')}Z`).join('')
  const heightPx = Math.max(24, 4 + (maxY - minY) * scale)
  // Numbers that would run into each other say nothing: the card tells how many there are.
  const isNumbered = proposal.pours.length <= mostNumbers
  return (
    <svg className="mini-plan" width={size} height={heightPx} viewBox={`0 0 ${size} ${heightPx}`} aria-hidden="true">
      {proposal.pours.map((pour, i) => {
        const [x, y] = at(labelSpot(pour.region).at).split(' ')
        const tint = (i % 4) + 1
        return (
          <g key={`${pour.areaM2} ${x} ${y}`}>
            <path d={path(pour.region)} fill={`var(--p${tint})`} stroke="var(--outline)" fillRule="evenodd" />
            {isNumbered ? (
              <text x={x} y={Number(y) + 5} textAnchor="middle" fill={`var(--p${tint}-ink)`}>
                {pour.number ?? i + 1}
              </text>
            ) : null}
          </g>
        )
      })}
      {proposal.joints.map(({ from, to }) => (
        <path
          key={at(from) + at(to)}
          d={`M${at(from)}L${at(to)}`}
          stroke="var(--header)"
          strokeWidth={isNumbered ? 2.5 : 1.2}
        />
      ))}
    </svg>
  )
}
