import { expect, it } from 'vitest'
import { setCornerRadius } from '../../core/document/commands/setCornerRadius'
import type { CurveRing } from '../../core/geometry/curve'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { createMemo } from '../../core/plan/memo'
import { outlineDimensions } from '../../core/reports/dimensions'
import { toPlan, toScreen } from '../../renderer/editor/camera/camera'
import { homeBox } from '../../renderer/editor/camera/homeBox'
import { placeArc, placeLine, radiusLetters, surroundingsOf } from '../../renderer/editor/layers/placeDimension'
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
