import { expect, it } from 'vitest'
import { setCornerRadius } from '../../core/document/commands/setCornerRadius'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { createMemo } from '../../core/plan/memo'
import { outlineDimensions } from '../../core/reports/dimensions'
import { toPlan } from '../../renderer/editor/camera/camera'
import { homeBox } from '../../renderer/editor/camera/homeBox'
import { placeArc, radiusLetters } from '../../renderer/editor/layers/placeDimension'
import { deriveLive } from '../../renderer/store/livePlan'
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
