import { type KeyboardEvent, type PointerEvent, useMemo, useRef } from 'react'
import type { CurveRegion } from '../../core/geometry/curve'
import { flattenRing } from '../../core/geometry/flattenRing'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import type { SlabFront } from '../../core/pours/slab/front'
import type { SlabStrip } from '../../core/pours/slab/planAtSlab'
import type { Measures } from '../../core/units/measures'
import type { Pt } from '../../shared/document/primitives'
import { withoutFling } from '../app/withoutFling'
import { labelSpot } from '../editor/layers/drawPours'

/** Chords this near the curve do for a picture, m. */
const chordM = 0.02
const pad = 0.06
/** A drag goes by whole inches. */
const gripM = 0.0254

interface Frame {
  readonly at: (point: Pt) => string
  readonly box: string
  readonly scale: number
}

/** Drawing frame to picture: 1000 units across the longer side. */
function frameOf(region: CurveRegion): Frame {
  const ring = flattenRing(region.outer, chordM)
  const xs = ring.map(([x]) => x)
  const ys = ring.map(([, y]) => y)
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const scale = 1000 / Math.max(maxX - minX, maxY - minY)
  const room = 1000 * pad
  return {
    scale,
    at: ([x, y]) => `${((x - minX) * scale).toFixed(1)} ${((maxY - y) * scale).toFixed(1)}`,
    box: `${-room} ${-room} ${(maxX - minX) * scale + 2 * room} ${(maxY - minY) * scale + 2 * room}`,
  }
}

/** The strips with their state, and the front of the concrete, which is dragged along the slab. */
export function SlabMap({
  region,
  day,
  strips,
  front,
  comeM,
  isMarked,
  step,
  print,
  when,
  onCome,
}: {
  readonly region: CurveRegion
  readonly day: PourDayPlan
  readonly strips: readonly SlabStrip[]
  readonly front: SlabFront
  readonly comeM: number
  /** The front is in the log; else it is where the plan has it, or being set. */
  readonly isMarked: boolean
  readonly step: number
  readonly print: Measures
  /** On the plate of a strip, under its letter. */
  readonly when: (strip: SlabStrip) => string
  readonly onCome: (comeM: number) => void
}) {
  const svg = useRef<SVGSVGElement>(null)
  const frame = useMemo(() => frameOf(region), [region])
  const [ux, uy] = day.direction
  const path = (shape: CurveRegion) =>
    [shape.outer, ...shape.holes].map(ring => `M${flattenRing(ring, chordM).map(frame.at).join('L')}Z`).join('')
  const points = useMemo(() => flattenRing(region.outer, chordM), [region])
  const along = points.map(([x, y]) => ux * x + uy * y)
  const across = points.map(([x, y]) => uy * x - ux * y)
  const from = Math.min(...along)
  const [left, right] = [Math.min(...across) - 0.3, Math.max(...across) + 0.3]
  const lineAt = (m: number): readonly [Pt, Pt] => {
    const d = from + m
    const place = (s: number): Pt => [ux * d + uy * s, uy * d - ux * s]
    return [place(left), place(right)]
  }
  const [a, b] = lineAt(comeM)
  const set = (value: number) => onCome(Math.min(front.lengthM, Math.max(0, value)))
  const take = (event: PointerEvent) => {
    const matrix = svg.current?.getScreenCTM()
    if (!matrix) return
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse())
    const [x0, y0] = frame.at([0, 0]).split(' ').map(Number)
    const [x, y] = [(at.x - x0!) / frame.scale, (y0! - at.y) / frame.scale]
    set(Math.round((ux * x + uy * y - from) / gripM) * gripM)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const moves: Readonly<Record<string, number>> = {
      ArrowRight: step,
      ArrowUp: step,
      ArrowLeft: -step,
      ArrowDown: -step,
      PageUp: 5 * step,
      PageDown: -5 * step,
      Home: -front.lengthM,
      End: front.lengthM,
    }
    const move = moves[event.key]
    if (move === undefined) return
    event.preventDefault()
    set(comeM + move)
  }
  return (
    <div
      ref={withoutFling}
      className="slab-map"
      role="slider"
      tabIndex={0}
      aria-label="How far the concrete has come"
      aria-valuemin={0}
      aria-valuemax={Math.round(front.lengthM * 100) / 100}
      aria-valuenow={Math.round(comeM * 100) / 100}
      aria-valuetext={`${print.length(comeM)} of ${print.length(front.lengthM)}`}
      onKeyDown={onKeyDown}
      onPointerDown={event => {
        event.currentTarget.setPointerCapture(event.pointerId)
        take(event)
      }}
      onPointerMove={event => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) take(event)
      }}
    >
      <svg ref={svg} viewBox={frame.box} aria-hidden="true">
        <defs>
          <pattern id="slab-placed" width="26" height="26" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect width="26" height="26" fill="var(--slab)" />
            <rect width="8" height="26" fill="var(--ink-3)" />
          </pattern>
          <pattern id="slab-ready" width="30" height="30" patternUnits="userSpaceOnUse">
            <rect width="30" height="30" fill="var(--chalk-wash)" />
            <circle cx="15" cy="15" r="5" fill="var(--chalk)" />
          </pattern>
          <pattern id="slab-stamped" width="60" height="40" patternUnits="userSpaceOnUse">
            <rect width="60" height="40" fill="var(--border-fill)" />
            <path d="M0 0h60M0 20h60M15 0v20M45 20v20" stroke="var(--ink)" strokeWidth="4" fill="none" />
          </pattern>
        </defs>
        {day.shapes.map((shape, i) => {
          const strip = strips[i]
          return (
            <g key={shape.id}>
              {shape.regions.map(piece => (
                <path
                  key={frame.at(piece.outer[0]!.from)}
                  d={path(piece)}
                  fillRule="evenodd"
                  fill={!strip || strip.state === 'toPlace' ? 'var(--page)' : `url(#slab-${strip.state})`}
                  stroke="var(--outline)"
                  strokeWidth="5"
                />
              ))}
            </g>
          )
        })}
        <path d={path(region)} fill="none" stroke="var(--outline)" strokeWidth="11" />
        {day.shapes.map((shape, i) => {
          const piece = shape.regions[0]
          if (!piece) return null
          const [x, y] = frame.at(labelSpot(piece).at).split(' ')
          const strip = strips[i]
          const isTight = strip !== undefined && strip.state !== 'stamped' && strip.slackMin < 0
          return (
            <g key={shape.id} transform={`translate(${x} ${y})`}>
              <rect
                x="-78"
                y="-62"
                width="156"
                height="124"
                fill="var(--raised)"
                stroke="var(--outline)"
                strokeWidth={isTight ? 14 : 5}
              />
              <text y="-2" textAnchor="middle">
                {shape.id}
              </text>
              <text className="when" y="46" textAnchor="middle">
                {strip ? when(strip) : ''}
              </text>
            </g>
          )
        })}
        <path
          className="slab-front"
          d={`M${frame.at(a)}L${frame.at(b)}`}
          strokeDasharray={isMarked ? undefined : '40 22'}
        />
        {[a, b].map(end => {
          const [x, y] = frame.at(end).split(' ')
          return <circle key={`${x} ${y}`} className="slab-front-end" cx={x} cy={y} r="26" />
        })}
      </svg>
      <p className="slab-legend" aria-hidden="true">
        <span>Blank: placed by.</span>
        <span>Lines: placed, ready about.</span>
        <span>Dots: ready, too hard about.</span>
        <span>Bricks: stamped.</span>
      </p>
    </div>
  )
}
