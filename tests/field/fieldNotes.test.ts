/**
 * Three invented patios as a field book would hold them, entered by tape ties, by a walk, by typed lengths and turns, and
 * by the pointer over a picture set to scale. What they must be is worked out by hand from their corners: the shoelace
 * formula, and for arcs the circular segment (CRC Standard Mathematical Tables, "Plane figures").
 */
import { describe, expect, it } from 'vitest'
import { addSlab } from '../../core/document/commands/addSlab'
import type { ShapeCorner } from '../../core/document/commands/drawShape'
import { scalePicture } from '../../core/document/commands/placePicture'
import { setEdgeRise } from '../../core/document/commands/setEdgeRise'
import { setPicture } from '../../core/document/commands/setSite'
import { tapeTie } from '../../core/geometry/field/tapeTie'
import { feetToMeters as ft } from '../../core/units/convert'
import { parseLength } from '../../core/units/parseLength'
import { emptySite } from '../../renderer/app/emptySite'
import { readWalk, type WalkRow } from '../../renderer/editor/entry/readWalk'
import { walkShape } from '../../renderer/slab/walk/walkShape'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { done, outlineArea } from '../commands/edit'
import { TestEditor } from '../editor/testEditor'

interface Patio {
  readonly name: string
  /** Feet. */
  readonly corners: readonly Pt[]
  /** Out of the slab, feet, by the corner an arc leaves. */
  readonly risesFt: Readonly<Record<number, number>>
  readonly areaFt2: number
}

const segmentFt2 = (chord: number, rise: number): number => {
  const radius = chord ** 2 / (8 * rise) + rise / 2
  const angle = 4 * Math.atan((2 * rise) / chord)
  return (radius ** 2 / 2) * (angle - Math.sin(angle))
}

const patios: readonly Patio[] = [
  {
    name: 'five sides, one an arc',
    corners: [
      [0, 0],
      [24, 0],
      [30, 10],
      [12, 20],
      [-4, 12],
    ],
    risesFt: { 2: 2 },
    // Shoelace: (24·10 + 30·20 − 12·10 + 12·12 + 4·20) / 2 = 472.
    areaFt2: 472 + segmentFt2(Math.hypot(18, 10), 2),
  },
  {
    name: 'an L with a corner cut at 45°',
    corners: [
      [0, 0],
      [30, 0],
      [30, 12],
      [18, 12],
      [14, 16],
      [14, 26],
      [0, 26],
    ],
    risesFt: {},
    // 30 × 12 + 14 × 14 + half of 4 × 4.
    areaFt2: 564,
  },
  {
    name: 'around a tree, one side hollowed',
    corners: [
      [3, 1],
      [21, 5],
      [25, 21],
      [9, 24],
      [1, 15],
    ],
    risesFt: { 4: -1.5 },
    // Shoelace: ((15 − 21) + (441 − 125) + (600 − 189) + (135 − 24) + (1 − 45)) / 2 = 394.
    areaFt2: 394 - segmentFt2(Math.hypot(2, 14), 1.5),
  },
]

/** Read to the eighth of an inch, as it is written: `12' 7 3/4"`. */
const taped = (lengthFt: number): string => {
  const eighths = Math.round(lengthFt * 96)
  const inches = `${Math.floor((eighths % 96) / 8)}${eighths % 8 === 0 ? '' : ` ${eighths % 8}/8`}`
  return `${Math.floor(eighths / 96)}' ${inches}"`.replace('2/8', '1/4').replace('4/8', '1/2').replace('6/8', '3/4')
}
const read = (text: string): number => {
  const length = parseLength(text, 'ftin')
  if (!length.ok) throw new Error(length.error.message)
  return length.value
}
const apartFt = ([ax, ay]: Pt, [bx, by]: Pt) => Math.hypot(bx - ax, by - ay)
/** A sixteenth of an inch along every edge is what the tape leaves open, twice over for two tapes to a corner. */
const taperFt2 = ({ corners }: Patio) =>
  (2 / 192) * corners.reduce((sum, at, i) => sum + apartFt(at, corners[(i + 1) % corners.length]!), 0)
const areaFt2 = (site: Site) => outlineArea(site) / ft(1) ** 2
const riseOf = ({ risesFt }: Patio, i: number) => ft(risesFt[i] ?? 0)
const expectArea = (site: Site, patio: Patio, withinFt2: number) =>
  expect(Math.abs(areaFt2(site) - patio.areaFt2)).toBeLessThan(withinFt2)

const drawn = (corners: readonly ShapeCorner[]) =>
  done(addSlab({ outline: { kind: 'corners', corners }, name: 'Patio' })(emptySite('notes', 'Notes')))

/** Degrees to the left from the edge before a corner to the one that leaves it. */
const turnAt = ({ corners }: Patio, i: number): number => {
  const n = corners.length
  const [a, b, c] = [corners[(i + n - 1) % n]!, corners[i]!, corners[(i + 1) % n]!]
  const [before, after] = [Math.atan2(b[1] - a[1], b[0] - a[0]), Math.atan2(c[1] - b[1], c[0] - b[0])]
  return ((((after - before) * 180) / Math.PI + 540) % 360) - 180
}
const turnText = (deg: number): string => {
  const minutes = Math.round(Math.abs(deg) * 60)
  return `${Math.floor(minutes / 60)}°${minutes % 60}′ ${deg < 0 ? 'right' : 'left'}`
}
/** Azimuth of an edge from drawing-up, as a quadrant bearing for a site whose north lies `northDeg` from up. */
const bearingText = (a: Pt, b: Pt, northDeg: number): string => {
  const azimuth = ((Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI - northDeg + 720) % 360
  const off = azimuth <= 90 ? azimuth : azimuth <= 270 ? Math.abs(180 - azimuth) : 360 - azimuth
  const minutes = Math.round(off * 60)
  return `${azimuth <= 90 || azimuth > 270 ? 'N' : 'S'} ${Math.floor(minutes / 60)}°${minutes % 60}' ${azimuth <= 180 ? 'E' : 'W'}`
}

const walkOf = (patio: Patio, turns: (i: number) => string): readonly WalkRow[] =>
  patio.corners.map((at, i) => ({
    turn: turns(i),
    length: taped(apartFt(at, patio.corners[(i + 1) % patio.corners.length]!)),
    rise: patio.risesFt[i] === undefined ? '' : `${patio.risesFt[i]}`,
  }))

const walked = (rows: readonly WalkRow[], lastTurn: string, northDeg: number) => {
  const notes = readWalk({ rows, lastTurn }, 'ftin', northDeg)
  if (!notes.ok) throw new Error(JSON.stringify(notes.error))
  const shaped = walkShape(notes.value)
  if (!shaped.ok) throw new Error(JSON.stringify(shaped.error))
  const site = done(addSlab({ outline: shaped.value.shapeAt([0, 0]), name: 'Patio' })(emptySite('notes', 'Notes')))
  return { site, walk: shaped.value.walk }
}

describe.each(patios)('field notes of a patio with $name', patio => {
  const { corners } = patio
  const n = corners.length

  it('become it by tape ties from two stakes, each checked from a third', () => {
    const stakes: readonly [Pt, Pt, Pt] = [
      [-6, -5],
      [34, -5],
      [10, -9],
    ]
    const tied = corners.map((at, i): ShapeCorner => {
      const [p, q, third] = stakes.map(stake => read(taped(apartFt(stake, at))))
      const tie = tapeTie([ft(-6), ft(-5)], [ft(34), ft(-5)], p!, q!, 'left', {
        from: [ft(10), ft(-9)],
        distanceM: third!,
      })
      if (!tie.ok) throw new Error(JSON.stringify(tie.error))
      expect(Math.abs(tie.value.closingErrorM!)).toBeLessThan(ft(1 / 48))
      return { at: tie.value.at, riseM: riseOf(patio, i) }
    })
    expectArea(drawn(tied), patio, taperFt2(patio))
  })

  it('become it by a walk with turns, and the last turn closes it', () => {
    const [a, b] = [corners[0]!, corners[1]!]
    const runs = `${((Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI).toFixed(4)}`
    const { site, walk } = walked(
      walkOf(patio, i => (i === 0 ? runs : turnText(turnAt(patio, i)))),
      turnText(turnAt(patio, 0)),
      0,
    )
    expectArea(site, patio, taperFt2(patio))
    expect(walk.closingErrorM).toBeLessThan(ft(1 / 12))
    expect(Math.abs(walk.turnErrorDeg!)).toBeLessThan(n / 60)
  })

  it('become it by a walk with bearings, wherever north lies on the sheet', () => {
    for (const northDeg of [0, 37, 211]) {
      const { site } = walked(
        walkOf(patio, i => bearingText(corners[i]!, corners[(i + 1) % n]!, northDeg)),
        '',
        northDeg,
      )
      expectArea(site, patio, taperFt2(patio))
      const outline = site.slabs[0]!.outline.vertices
      const far = outline.map(({ at }, i) =>
        apartFt([at[0] / ft(1), at[1] / ft(1)], [corners[i]![0] - corners[0]![0], corners[i]![1] - corners[0]![1]]),
      )
      expect(Math.max(...far)).toBeLessThan(1 / 12)
    }
  })

  it('become it by the other way around', () => {
    const back: Patio = {
      ...patio,
      corners: [...corners].reverse(),
      risesFt: Object.fromEntries(
        Object.entries(patio.risesFt).map(([i, rise]) => [(2 * n - 2 - Number(i)) % n, rise]),
      ),
    }
    const { site } = walked(
      walkOf(back, i => bearingText(back.corners[i]!, back.corners[(i + 1) % n]!, 0)),
      '',
      0,
    )
    expectArea(site, patio, taperFt2(patio))
  })

  it('become it by lengths and turns typed at the point, arcs by their rise', () => {
    const hand = new TestEditor().choose('slab', { form: 'corners' })
    const [a, b] = [corners[0]!, corners[1]!]
    hand.type('0', '0')
    hand.type(taped(apartFt(a, b)), `${((Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI).toFixed(4)}`)
    for (let i = 1; i < n - 1; i++) hand.type(taped(apartFt(corners[i]!, corners[i + 1]!)), turnText(turnAt(patio, i)))
    hand.key('Enter')
    expect(hand.site.slabs).toHaveLength(1)
    const site = Object.entries(patio.risesFt).reduce((at, [i, rise]) => {
      const edges = at.slabs[0]!.outline.edges
      return done(setEdgeRise(edges[Number(i)]!.id, ft(rise))(at))
    }, hand.site)
    expectArea(site, patio, taperFt2(patio))
  })

  it('become it by the pointer over a picture set to scale by two of its points', () => {
    // A picture of 8 px to the foot, taken in at another scale: 1200 px were to be 60 ft.
    const px = ([x, y]: Pt): Pt => [200 + 8 * x, 500 - 8 * y]
    const metersPerPixel = ft(60) / 1200
    const first = { assetId: 'a'.repeat(64), originAt: [0, 0] as const, metersPerPixel, turnDeg: 0, fade: 0.4 }
    const seen = (site: Site, at: Pt): Pt => {
      const { originAt, metersPerPixel: scale } = site.place.picture!
      const [x, y] = px(at)
      return [originAt[0] + x * scale, originAt[1] - y * scale]
    }
    const start = done(setPicture(first, { kind: 'image/png', base64: 'iVBORw0KGgo=' })(emptySite('notes', 'Notes')))
    const [a, c] = [corners[0]!, corners[2]!]
    const scaled = done(scalePicture(seen(start, a), seen(start, c), read(taped(apartFt(a, c))))(start))
    const hand = new TestEditor(scaled).choose('slab', { form: 'corners' })
    // At a zoom far in nothing but the place itself is caught.
    hand.zoom = 1e5
    for (const at of corners) hand.click(seen(scaled, at))
    hand.key('Enter')
    const site = Object.entries(patio.risesFt).reduce((at, [i, rise]) => {
      const edges = at.slabs[0]!.outline.edges
      return done(setEdgeRise(edges[Number(i)]!.id, ft(rise))(at))
    }, hand.site)
    expectArea(site, patio, taperFt2(patio))
  })
})

describe('a walk that does not close', () => {
  const rows = (last: string): readonly WalkRow[] =>
    [
      ['right', '20'],
      ['90 left', '14'],
      ['90 left', '20'],
      ['90 left', last],
    ].map(([turn, length]) => ({ turn: turn!, length: length!, rise: '' }))

  it('is spread while small and refused while large, and its turns likewise', () => {
    expect(walked(rows(`13' 11"`), '', 0).walk.closingErrorM).toBeCloseTo(ft(1 / 12), 9)
    expect(walked(rows('14'), '90 L', 0).walk).toMatchObject({ turnErrorDeg: 0 })
    expect(walked(rows('14'), '91 left', 0).walk.turnErrorDeg).toBeCloseTo(1, 9)
    const shapeOf = (last: string, lastTurn: string) => {
      const notes = readWalk({ rows: rows(last), lastTurn }, 'ftin', 0)
      return notes.ok && walkShape(notes.value)
    }
    expect(shapeOf('12', '')).toMatchObject({ ok: false, error: [{ code: 'traverseOpen' }] })
    // Four corners share 4° at most; a last turn to the wrong side is 180° off.
    expect(shapeOf('14', '95 left')).toMatchObject({
      ok: false,
      error: [{ code: 'turnsOpen', values: { turnsDeg: 365 } }],
    })
    expect(shapeOf('14', '90 right')).toMatchObject({
      ok: false,
      error: [{ code: 'turnsOpen', values: { turnsDeg: 180 } }],
    })
  })

  it('tells which box was misread, and never skips an edge in the middle', () => {
    const faultOf = (change: Partial<WalkRow>, row: number, lastTurn = '') => {
      const notes = readWalk(
        { rows: rows('14').map((each, i) => (i === row ? { ...each, ...change } : each)), lastTurn },
        'ftin',
        0,
      )
      return notes.ok ? null : notes.error
    }
    expect(faultOf({ length: '' }, 1)).toEqual({ row: 1, box: 'length', message: 'Edge 2 has no length.' })
    expect(faultOf({ length: 'ten' }, 2)).toMatchObject({ row: 2, box: 'length' })
    expect(faultOf({ turn: 'sideways' }, 3)).toMatchObject({ row: 3, box: 'turn' })
    expect(faultOf({ turn: 'sideways' }, 0)).toMatchObject({ row: 0, box: 'turn' })
    expect(faultOf({ rise: 'x' }, 0)).toMatchObject({ row: 0, box: 'rise' })
    expect(faultOf({}, 0, 'x')).toMatchObject({ row: -1, box: 'turn' })
    // Rows that were never filled in are no edges.
    expect(faultOf({ length: '' }, 3)).toBeNull()
  })
})
