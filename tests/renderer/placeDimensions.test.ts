import { describe, expect, it } from 'vitest'
import { addNoGo } from '../../core/document/commands/addAccess'
import { addTree, addWall } from '../../core/document/commands/addCaster'
import type { Command } from '../../core/document/commands/editSite'
import { setCornerRadius } from '../../core/document/commands/setCornerRadius'
import { setEdgeRise } from '../../core/document/commands/setEdgeRise'
import { addOpening, addSteps } from '../../core/document/commands/slabParts'
import type { CurveRing } from '../../core/geometry/curve'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { createMemo } from '../../core/plan/memo'
import { outlineDimensions } from '../../core/reports/dimensions'
import { printMeasures } from '../../core/units/printMeasures'
import { toPlan, toScreen } from '../../renderer/editor/camera/camera'
import { homeBox } from '../../renderer/editor/camera/homeBox'
import { dimensionGround } from '../../renderer/editor/layers/dimensionGround'
import { outlineOf } from '../../renderer/editor/layers/drawCasters'
import { around, meet, type Rect, runsThrough } from '../../renderer/editor/layers/labelRoom'
import { placeArc, radiusLetters } from '../../renderer/editor/layers/placeArc'
import { lettersBox, placeDimensions } from '../../renderer/editor/layers/placeDimensions'
import { placeLine, surroundingsOf } from '../../renderer/editor/layers/placeLine'
import { deriveLive } from '../../renderer/store/livePlan'
import type { Pt } from '../../shared/document/primitives'
import { TestEditor } from '../editor/testEditor'

const ft = 0.3048

it('a radius is written clear of a marked point', () => {
  const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
  const corner = editor.site.slabs[0]!.outline.vertices[3]!
  editor.editor.run('corner radius', setCornerRadius(corner.id, 6 * ft))
  const dimension = outlineDimensions(resolveSlab(editor.site.slabs[0]!).outline).find(each => each.kind === 'arc')
  if (dimension?.kind !== 'arc') throw new Error('no arc')
  for (const zoom of [15, 20, 40, 80]) {
    const camera = { x: 0, y: 0, zoom }
    const alone = placeArc(dimension, camera)!
    expect(alone.under).toBe(false)
    const letters = (placed: typeof alone) => radiusLetters(placed, 48)
    const flag = toPlan(camera, letters(alone))
    const beside = placeArc(dimension, camera, [flag])!
    const [[x, y], [fx, fy]] = [letters(beside), letters(alone)]
    expect(Math.abs(x - fx) > 30 || Math.abs(y - (fy - 7)) > 16).toBe(true)
  }
})

it('at first the slab is in view with what stands near it, and what is far off makes it no smaller', () => {
  const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
  const boxOf = () => homeBox(deriveLive(editor.site, '2026-07-21', createMemo()))
  const alone = boxOf()
  editor.choose('access', { access: 'truck' }).click([alone.maxX + 6 * ft, alone.minY])
  const withTruck = boxOf()
  expect(withTruck.maxX).toBeGreaterThan(alone.maxX + 6 * ft)
  editor.choose('access', { access: 'washout' }).click([alone.maxX + 60 * ft, alone.minY])
  expect(boxOf()).toEqual(withTruck)
})

it('letters of a radius begin at its foot, however wide they are, or stand under it', () => {
  const beside = { foot: [100, 50], side: -1, under: false } as const
  for (const widthPx of [40, 64, 96]) expect(radiusLetters(beside, widthPx)[0] + widthPx / 2).toBe(100 - 14)
  expect(radiusLetters({ ...beside, side: 1 }, 60)).toEqual([144, 50])
  expect(radiusLetters({ ...beside, under: true }, 60)[0]).toBe(100)
})

it('letters of a length make way for the line of a neighbor that crosses theirs at a corner turned inwards', () => {
  const corners: readonly Pt[] = [
    [0, 0],
    [16, 0],
    [16, 6],
    [8, 6],
    [8, 13],
    [0, 13],
  ]
  const ring: CurveRing = corners.map((from, i) => ({ edgeId: `e${i}`, from, to: corners[(i + 1) % corners.length]! }))
  const [lettersPx, camera] = [40, { x: 0, y: 0, zoom: 11 }] as const
  const places = outlineDimensions(ring).flatMap(dimension => {
    if (dimension.kind !== 'line') return []
    const surroundings = surroundingsOf({ ring, name: 'Patio' }, dimension, camera, lettersPx)
    return [{ ...placeLine(dimension, camera, surroundings), edgeId: dimension.edgeId }]
  })
  const [across, up] = ['e2', 'e3'].map(id => places.find(({ edgeId }) => edgeId === id)!)
  // The letters lie level and upright; each line runs through the other's.
  expect(Math.abs(across!.at[0] - up!.at[0])).toBeGreaterThan(lettersPx / 2 + 12)
  expect(Math.abs(across!.at[1] - up!.at[1])).toBeGreaterThan(lettersPx / 2 + 12)
  const alone = places.find(({ edgeId }) => edgeId === 'e0')!
  expect(alone.at[0]).toBeCloseTo(8 * camera.zoom, 9)
})

it('a small opening has its dimensions around it, a large one inside', () => {
  const ring = (sideM: number): CurveRing => {
    const corners: readonly Pt[] = [
      [0, 0],
      [0, sideM],
      [sideM, sideM],
      [sideM, 0],
    ]
    return corners.map((from, i) => ({ edgeId: `e${i}`, from, to: corners[(i + 1) % 4]! }))
  }
  const leftOf = (sideM: number): number => {
    const of = { ring: ring(sideM), name: 'Pool' }
    const dimension = outlineDimensions(of.ring).find(each => each.kind === 'line' && each.edgeId === 'e0')
    if (dimension?.kind !== 'line') throw new Error('no line')
    const camera = { x: 0, y: 0, zoom: 30 }
    return placeLine(dimension, camera, surroundingsOf(of, dimension, camera, 40)).at[0]
  }
  expect(leftOf(2)).toBeLessThan(0)
  expect(leftOf(8)).toBeGreaterThan(0)
})

it('neither the letters nor the foot of a radius lie on a flag that stands where the arc is drawn from', () => {
  const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
  const corner = editor.site.slabs[0]!.outline.vertices[2]!
  editor.editor.run('corner radius', setCornerRadius(corner.id, 6 * ft))
  const dimension = outlineDimensions(resolveSlab(editor.site.slabs[0]!).outline).find(each => each.kind === 'arc')
  if (dimension?.kind !== 'arc') throw new Error('no arc')
  for (const zoom of [22, 31, 45]) {
    const camera = { x: 0, y: 0, zoom }
    const { foot } = placeArc(dimension, camera, [dimension.center])!
    const [fx, fy] = toScreen(camera, dimension.center)
    expect(Math.abs(foot[0] - fx) > 9 || Math.abs(foot[1] - (fy - 7)) > 16).toBe(true)
  }
})

describe('among what stands around a slab of 24 by 14 ft', () => {
  const zoom = 40
  const maple = { name: 'Maple', heightM: 8, trunkHeightM: 2, density: 'medium', leaves: 'evergreen' } as const
  const camera = { x: 0, y: 0, zoom }

  function siteWith(...commands: readonly ((slabId: string, edgeIds: readonly string[]) => Command)[]) {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
    const slab = editor.site.slabs[0]!
    const edgeIds = slab.outline.edges.map(({ id }) => id)
    for (const make of commands) editor.editor.run('step', make(slab.id, edgeIds))
    const { site } = editor
    const slabs = site.slabs.map(resolveSlab)
    const others = site.slabs.flatMap(({ openings }) => openings.map(({ path }) => path))
    const rings = [
      ...slabs.map(({ outline: ring, name }) => ({ ring, name })),
      ...others.map(path => ({ ring: outlineOf(path), name: 'Opening' })),
    ]
    return {
      editor,
      slabs,
      placed: placeDimensions(rings, dimensionGround(site, slabs, site.points), camera, editor.print),
    }
  }

  const linesOf = ({ placed, editor }: ReturnType<typeof siteWith>) =>
    placed.flatMap(each => {
      if (!('line' in each)) return []
      const { line, dimension } = each
      const { a, b, n, outPx } = line
      const shifted = (at: Pt): Pt => [at[0] + n[0] * outPx, at[1] + n[1] * outPx]
      const letters = lettersBox(line, editor.print.length(dimension.lengthM).length * 6)
      return [{ ...line, from: shifted(a), to: shifted(b), letters }]
    })

  it('dimensions stand 30 px off their edges where nothing is in the way', () => {
    const lines = linesOf(siteWith())
    expect(lines.map(({ outPx, onSlab }) => [outPx, onSlab])).toEqual(Array(4).fill([30, false]))
    for (const { a, b, at, n } of lines)
      expect(Math.hypot(at[0] - (a[0] + b[0]) / 2 - 30 * n[0], at[1] - (a[1] + b[1]) / 2 - 30 * n[1])).toBeLessThan(
        1e-9,
      )
  })

  const nearest = ([x, y]: Pt, { x: left, y: top, width, height }: Rect): number =>
    Math.hypot(Math.max(left - x, 0, x - left - width), Math.max(top - y, 0, y - top - height))

  it('no letters lie on a crown, wherever along an edge it stands; a line runs through none that hides most of it', () => {
    for (const yFt of [-2, 1, 3, 5, 7, 9, 11, 13, 16])
      for (const crownFt of [3, 5, 8]) {
        const at: Pt = [-crownFt * ft, yFt * ft]
        const tree = addTree({ ...maple, at, crownRadiusM: crownFt * ft })
        const lines = linesOf(siteWith(() => tree))
        const center = toScreen(camera, at)
        for (const { letters, from, to } of lines) {
          expect(nearest(center, letters), `${yFt} ${crownFt}`).toBeGreaterThan(crownFt * ft * zoom - 3)
          const steps = Array.from(
            { length: 101 },
            (_, i): Pt => [from[0] + ((to[0] - from[0]) * i) / 100, from[1] + ((to[1] - from[1]) * i) / 100],
          )
          const covered = steps.filter(([x, y]) => Math.hypot(x - center[0], y - center[1]) < crownFt * ft * zoom)
          expect(covered.length, `${yFt} ${crownFt}`).toBeLessThan(65)
        }
      }
  })

  it('steps keep their edge, and its dimension stands beyond them or beside', () => {
    for (const fromT of [0, 0.2, 0.5, 0.7])
      for (const risers of [2, 3, 4]) {
        const steps = { fromT, widthM: 4 * ft, risers, riserM: 0.17, treadM: 0.3 }
        const site = siteWith((slabId, edgeIds) => addSteps(slabId, { edgeId: edgeIds[1]!, ...steps }))
        const [corners] = dimensionGround(site.editor.site, site.slabs, []).steps
        const seen = corners!.map(at => toScreen(camera, at))
        const [xs, ys] = [seen.map(([x]) => x), seen.map(([, y]) => y)]
        const flight: Rect = {
          x: Math.min(...xs),
          y: Math.min(...ys),
          width: Math.max(...xs) - Math.min(...xs),
          height: Math.max(...ys) - Math.min(...ys),
        }
        for (const { letters, from, to } of linesOf(site)) {
          expect(meet(letters, flight), `${fromT} ${risers}`).toBe(false)
          expect(runsThrough(flight, from, to), `${fromT} ${risers}`).toBe(false)
        }
      }
  })

  it('no letters lie on a fence, whether it runs along an edge or crosses its dimension', () => {
    const lines: readonly (readonly Pt[])[] = [
      [
        [25.6, -4],
        [25.6, 18],
      ],
      [
        [22, 7],
        [40, 7],
      ],
      [
        [24.5, 2],
        [30, 16],
      ],
    ]
    for (const points of lines) {
      const line = points.map(([x, y]): Pt => [x * ft, y * ft])
      const site = siteWith(() => addWall({ name: 'Fence', line, heightM: 2 }))
      for (const { letters, a } of linesOf(site))
        for (const [i, end] of line.slice(1).entries())
          expect(runsThrough(letters, toScreen(camera, line[i]!), toScreen(camera, end)), `${points} ${a}`).toBe(false)
    }
  })

  it('letters of a circle near an edge keep off the dimension of the edge, whichever side it is', () => {
    const far: readonly Pt[] = [
      [21.5, 7],
      [2.5, 7],
      [12, 2.5],
      [12, 11.5],
      [21.5, 11.5],
    ]
    for (const [x, y] of far) {
      const shape = { kind: 'circle', center: [x * ft, y * ft], radiusM: 2 * ft } as const
      const site = siteWith(slabId => addOpening(slabId, { shape, kind: 'planter' }))
      const arcs = site.placed.flatMap(each => ('arc' in each ? [each.arc] : []))
      expect(arcs).toHaveLength(1)
      const letters = around(radiusLetters(arcs[0]!, 80), 80, 20)
      for (const line of linesOf(site)) {
        expect(meet(letters, line.letters), `${x} ${y}`).toBe(false)
        expect(runsThrough(letters, line.from, line.to), `${x} ${y}`).toBe(false)
      }
    }
  })
})

it('an area to keep off is in view whole where it lies beside the slab, and makes it no smaller where it is far', () => {
  const boxWith = (xFt: number, widthFt: number) => {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
    const shape = { kind: 'rectangle', at: [xFt * ft, 2 * ft], widthM: widthFt * ft, depthM: 9 * ft } as const
    editor.editor.run('no-go', addNoGo(shape))
    return homeBox(deriveLive(editor.site, '2026-07-21', createMemo()))
  }
  expect(boxWith(28, 9).maxX).toBeCloseTo(37 * ft, 9)
  expect(boxWith(40, 9).maxX).toBeCloseTo(24 * ft, 9)
  // A whole garden: as much of it as leaves the slab large.
  expect(boxWith(28, 200).maxX).toBeCloseTo((24 + 0.6 * 24) * ft, 9)
})

it('a dimension keeps its place while another slab is drawn, and looks for a new one once a tree stands on it', () => {
  const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
  const camera = { x: 100, y: 400, zoom: 60 }
  const print = printMeasures('ftin')
  const placed = () => {
    const { site } = editor
    const slabs = site.slabs.map(resolveSlab)
    const rings = slabs.map(({ outline: ring, name }) => ({ ring, name }))
    return placeDimensions(rings, dimensionGround(site, slabs, []), camera, print).flatMap(each =>
      'line' in each ? [each.line] : [],
    )
  }
  const alone = placed()
  editor.choose('slab', { form: 'rectangle' }).click([30, 0]).click([34, 3])
  expect(editor.site.slabs).toHaveLength(2)
  const beside = placed()
  expect(alone.every((line, i) => beside[i] === line)).toBe(true)
  const [x, y] = toPlan(camera, alone[0]!.at)
  const shade = { name: 'Maple', heightM: 8, trunkHeightM: 2, density: 'medium', leaves: 'evergreen' } as const
  editor.editor.run('tree', addTree({ ...shade, at: [x, y], crownRadiusM: 1 }))
  expect(placed()[0]).not.toEqual(alone[0])
})

it('places stay with the plan while it is moved, as if they were looked for anew', () => {
  const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
  const shade = { name: 'Maple', heightM: 8, trunkHeightM: 2, density: 'medium', leaves: 'evergreen' } as const
  editor.editor.run('tree', addTree({ ...shade, at: [2, -0.5], crownRadiusM: 1.5 }))
  const { site } = editor
  const slabs = site.slabs.map(resolveSlab)
  const ground = dimensionGround(site, slabs, [])
  const at = (x: number, y: number, ring: CurveRing) =>
    placeDimensions([{ ring, name: 'Patio' }], ground, { x, y, zoom: 60 }, printMeasures('ftin')).flatMap(each =>
      'line' in each ? [each.line] : [],
    )
  const { outline } = slabs[0]!
  at(100, 400, outline)
  const moved = at(163, 322, outline)
  const anew = at(163, 322, [...outline])
  expect(moved.length).toBe(4)
  moved.forEach((line, i) => {
    const { a, b, at: middle, ...rest } = anew[i]!
    for (const [own, fresh] of [
      [line.a, a],
      [line.b, b],
      [line.at, middle],
    ] as const)
      expect(Math.hypot(own[0] - fresh[0], own[1] - fresh[1])).toBeLessThan(1e-9)
    expect({ outPx: line.outPx, onSlab: line.onSlab, upright: line.upright }).toEqual({
      outPx: rest.outPx,
      onSlab: rest.onSlab,
      upright: rest.upright,
    })
  })
})

describe('the length along an arc', () => {
  const zoom = 40
  const camera = { x: 100, y: 400, zoom }
  const print = printMeasures('ftin')

  function alongOf(...commands: readonly ((slabId: string, arcId: string) => Command)[]) {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
    const slab = editor.site.slabs[0]!
    const arcId = slab.outline.edges[1]!.id
    editor.editor.run('arc', setEdgeRise(arcId, 4 * ft))
    for (const make of commands) editor.editor.run('step', make(slab.id, arcId))
    const { site } = editor
    const slabs = site.slabs.map(resolveSlab)
    const ground = dimensionGround(site, slabs, [])
    const placed = placeDimensions(
      slabs.map(({ outline: ring, name }) => ({ ring, name })),
      ground,
      camera,
      print,
    )
    const along = placed.flatMap(each => ('arc' in each && each.along ? [each.along] : []))[0]
    if (!along) throw new Error('no line along the arc')
    return { along, ground, letters: lettersBox(along, 90) }
  }

  const pointsOf = ({ center, radiusPx, start, sweep }: ReturnType<typeof alongOf>['along']): readonly Pt[] =>
    Array.from({ length: 101 }, (_, i): Pt => {
      const angle = start + (sweep * i) / 100
      return [center[0] + radiusPx * Math.cos(angle), center[1] + radiusPx * Math.sin(angle)]
    })

  it('stands 30 px outside its arc, its letters in the middle, where nothing is in the way', () => {
    const { along } = alongOf()
    expect([along.outPx, along.onSlab]).toEqual([30, false])
    expect(along.at).toEqual(pointsOf(along)[50]!.map(each => expect.closeTo(each, 9)))
  })

  it('lies on no steps, few or many', () => {
    for (const risers of [2, 3, 4, 6])
      for (const [fromT, widthFt] of [
        [0, 6],
        [0.3, 6],
        [0.6, 6],
        [0.25, 8],
      ] as const) {
        const flight = { fromT, widthM: widthFt * ft, risers, riserM: 0.17, treadM: 0.33 }
        const { along, ground, letters } = alongOf((slabId, edgeId) => addSteps(slabId, { edgeId, ...flight }))
        const corners = ground.steps[0]!.map(at => toScreen(camera, at))
        const away = corners.map(([x, y]) => Math.hypot(x - along.center[0], y - along.center[1]))
        const [near, far] = [Math.min(...away), Math.max(...away)]
        const isClear = along.radiusPx > far || along.radiusPx < near
        expect(isClear, `${risers} ${fromT}`).toBe(true)
        for (const corner of corners) expect(meet(letters, around(corner, 1, 1)), `${risers} ${fromT}`).toBe(false)
      }
  })

  it('has its letters on no crown that stands at the arc', () => {
    for (const yFt of [2, 5, 7, 9, 12]) {
      const at: Pt = [29 * ft, yFt * ft]
      const crownM = 3.4 * ft
      const maple = { name: 'Maple', heightM: 8, trunkHeightM: 2, density: 'medium', leaves: 'evergreen' } as const
      const { letters } = alongOf(() => addTree({ ...maple, at, crownRadiusM: crownM }))
      const [x, y] = toScreen(camera, at)
      const [dx, dy] = [
        Math.max(letters.x - x, 0, x - letters.x - letters.width),
        Math.max(letters.y - y, 0, y - letters.y - letters.height),
      ]
      expect(Math.hypot(dx, dy), String(yFt)).toBeGreaterThan(crownM * zoom - 8)
    }
  })
})

describe('between two slabs', () => {
  const print = printMeasures('ftin')

  const between = (gapFt: number, zoom: number) => {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
    const left = (24 + gapFt) * ft
    editor
      .choose('slab', { form: 'rectangle' })
      .click([left, 0])
      .click([left + 20 * ft, 14 * ft])
    const slabs = editor.site.slabs.map(resolveSlab)
    expect(slabs).toHaveLength(2)
    const rings = slabs.map(({ outline: ring, name }) => ({ ring, name }))
    const camera = { x: 0, y: 600, zoom }
    return placeDimensions(rings, dimensionGround(editor.site, slabs, []), camera, print).flatMap(placed => {
      if (!('line' in placed)) return []
      const other = slabs.find(({ outline }) => outline !== placed.of.ring)!
      const corners = other.outline.map(({ from }) => toScreen(camera, from))
      const { a, b, n, outPx } = placed.line
      const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)]
      const [x, y] = [Math.min(...xs), Math.min(...ys)]
      const shifted = (at: Pt): Pt => [at[0] + n[0] * outPx, at[1] + n[1] * outPx]
      return [
        {
          line: placed.line,
          letters: lettersBox(placed.line, print.length(placed.dimension.lengthM).length * 6),
          ends: [shifted(a), shifted(b)] as const,
          neighbor: { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y },
        },
      ]
    })
  }

  it('no dimension lies on the neighbor, however narrow the gap, and both stand outside where it is wide', () => {
    for (const gapFt of [0.5, 2, 4, 6])
      for (const zoom of [12, 20, 28])
        for (const { letters, ends, neighbor } of between(gapFt, zoom)) {
          expect(meet(letters, neighbor), `${gapFt} ${zoom}`).toBe(false)
          expect(runsThrough(neighbor, ...ends), `${gapFt} ${zoom}`).toBe(false)
        }
    expect(between(20, 28).map(({ line }) => [line.outPx, line.onSlab])).toEqual(Array(8).fill([30, false]))
  })
})

it('the width of a circle is written beside a flag that stands in its middle', () => {
  const dimension = outlineDimensions(
    resolveSlab(new TestEditor().choose('slab', { form: 'circle' }).click([0, 0]).click([4, 0]).site.slabs[0]!).outline,
  )[0]
  if (dimension?.kind !== 'arc') throw new Error('no circle')
  for (const zoom of [16, 22, 30, 44]) {
    const camera = { x: 0, y: 0, zoom }
    const { letters } = placeArc(dimension, camera, [[0, 0]])!
    expect(meet(letters, { x: -5, y: -15, width: 10, height: 16 }), String(zoom)).toBe(false)
  }
})
