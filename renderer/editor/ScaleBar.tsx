import { memo } from 'react'
import { useStore } from 'zustand'
import type { Eye } from './camera/eye'
import { gridStepM } from './layers/drawGround'

/** A tape of four blocks, two grid squares long in all or four, whichever fits. */
export const ScaleBar = memo(function ScaleBar({
  eye,
  units,
}: {
  readonly eye: Eye
  readonly units: 'ftin' | 'metric'
}) {
  const zoom = useStore(eye, camera => camera?.zoom)
  if (zoom === undefined) return null
  const step = gridStepM(zoom, units)
  const wholeM = step * zoom * 4 <= 220 ? step * 4 : step * 2
  const unitM = units === 'ftin' ? 0.3048 : 1
  const whole = Number((wholeM / unitM).toFixed(2))
  const unit = units === 'ftin' ? 'ft' : 'm'
  const block = (wholeM * zoom) / 4
  return (
    <svg
      className="scale-bar"
      width={wholeM * zoom + 60}
      height="34"
      role="img"
      aria-label={`Scale bar, ${whole} ${unit}`}
    >
      <g transform="translate(6 0)">
        {[0, 1, 2, 3].map(i => (
          <rect key={i} x={i * block} y="20" width={block} height="6" className={i % 2 === 0 ? 'dark' : 'pale'} />
        ))}
        <text x="0" y="13">
          0
        </text>
        <text x={2 * block} y="13" textAnchor="middle">
          {Number((whole / 2).toFixed(3))}
        </text>
        <text x={4 * block} y="13" textAnchor="middle">
          {whole} {unit}
        </text>
      </g>
    </svg>
  )
})
