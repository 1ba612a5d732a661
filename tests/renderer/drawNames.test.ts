import { expect, it } from 'vitest'
import { addSpot } from '../../core/document/commands/addAccess'
import { addTree } from '../../core/document/commands/addCaster'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { printMeasures } from '../../core/units/printMeasures'
import { type Camera, toScreen } from '../../renderer/editor/camera/camera'
import { closedOutline } from '../../renderer/editor/layers/closedOutline'
import { drawMarkNames } from '../../renderer/editor/layers/drawMarkNames'
import { drawCasterNames, drawSlabNames } from '../../renderer/editor/layers/drawNames'
import { nameSpot } from '../../renderer/editor/layers/drawPours'
import { around, labelRoom, meet, type Rect, runsThrough } from '../../renderer/editor/layers/labelRoom'
import { markHalf } from '../../renderer/editor/layers/markSizes'
import type { Pen } from '../../renderer/editor/layers/pen'
import { spareDrawn } from '../../renderer/editor/layers/spareDrawn'
import type { Pt } from '../../shared/document/primitives'
import { TestEditor } from '../editor/testEditor'

const ft = 0.3048
const print = printMeasures('ftin')
const size = { width: 900, height: 700 }

/** A pen that writes down what is lettered and where; letters are half as wide as they are high. */
function writingPen(camera: Camera) {
  const written: { readonly text: string; readonly box: Rect }[] = []
  let at: Pt = [0, 0]
  const ctx = {
    font: '',
    save: () => undefined,
    restore: () => undefined,
    rotate: () => undefined,
    fillRect: () => undefined,
    strokeText: () => undefined,
    translate: (x: number, y: number) => {
      at = [x, y]
    },
    measureText: (text: string) => ({ width: (text.length * sizeOf()) / 2 }),
    fillText: (text: string) => {
      written.push({ text, box: around(at, (text.length * sizeOf()) / 2, sizeOf()) })
    },
  }
  const sizeOf = () => Number(/([\d.]+)px/.exec(ctx.font)![1])
  const pen = { ctx, camera, size, inks: { letterScale: 1, weight: 1 } } as unknown as Pen
  return { pen, written }
}

function drawnNames(editor: TestEditor, camera: Camera) {
  const { site } = editor
  const slabs = site.slabs.map(resolveSlab)
  const { pen, written } = writingPen(camera)
  const room = labelRoom({ x: 0, y: 0, ...size })
  spareDrawn(pen, slabs, site, room)
  drawSlabNames(pen, slabs, print, room, (_, region) => nameSpot(region))
  drawMarkNames(pen, site, [], room, true)
  drawCasterNames(pen, site.casters, slabs, print, room)
  return { written, slabs }
}

const maple = { heightM: 8, trunkHeightM: 2, density: 'medium', leaves: 'evergreen' } as const

it('no name of a row of trees lies on a crown or on the slab beside it; one that has no place is left out', () => {
  for (const zoom of [6, 12, 24]) {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('60', '30')
    const at = Array.from({ length: 8 }, (_, i): Pt => [(4 + 7.4 * i) * ft, -4 * ft])
    for (const [i, trunk] of at.entries())
      editor.editor.run('tree', addTree({ ...maple, name: `Row tree ${i + 1}`, at: trunk, crownRadiusM: 3.8 * ft }))
    const camera = { x: 150, y: 500, zoom }
    const { written, slabs } = drawnNames(editor, camera)
    const names = written.filter(({ text }) => text.startsWith('Row tree'))
    const crowns = at.map(each => around(toScreen(camera, each), 2 * 3.3 * ft * zoom, 2 * 3.3 * ft * zoom))
    const [a, , c] = slabs[0]!.outline.map(({ from }) => toScreen(camera, from))
    const slab: Rect = { x: a![0], y: c![1], width: c![0] - a![0], height: a![1] - c![1] }
    for (const { text, box } of names) {
      expect(
        crowns.some(crown => meet(crown, box)),
        `${text} ${zoom}`,
      ).toBe(false)
      expect(meet(slab, box), `${text} ${zoom}`).toBe(false)
    }
    expect(names.length).toBeGreaterThan(0)
  }
})

it('a name that fits in no clear place stands in its own crown where that is wide', () => {
  const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('60', '30')
  editor.editor.run('tree', addTree({ ...maple, name: 'Elm', at: [30 * ft, 15 * ft], crownRadiusM: 13 * ft }))
  const camera = { x: -700, y: 900, zoom: 120 }
  const { written } = drawnNames(editor, camera)
  const elm = written.find(({ text }) => text === 'Elm')!
  const [x, y] = toScreen(camera, [30 * ft, 15 * ft])
  expect(Math.hypot(elm.box.x - x, elm.box.y - y)).toBeLessThan(13 * ft * 120)
})

it('the area of a slab is written over none of its edges, however narrow the slab is seen', () => {
  for (const widthFt of [4, 5, 7, 10, 16, 24])
    for (const zoom of [18, 25, 40]) {
      const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('40', String(widthFt))
      const camera = { x: 100, y: 400, zoom }
      const { written, slabs } = drawnNames(editor, camera)
      const outline = closedOutline(slabs[0]!.outline).map(at => toScreen(camera, at))
      for (const { text, box } of written)
        for (const [i, end] of outline.slice(1).entries())
          expect(runsThrough(box, outline[i]!, end), `${text} ${widthFt} ${zoom}`).toBe(false)
      if (Math.sqrt(40 * widthFt) * ft * zoom > 112) expect(written.length, `${widthFt} ${zoom}`).toBeGreaterThan(0)
    }
})

it('two trucks 14 ft apart with a pump between stay apart on a plan seen from far off, and are whole from near', () => {
  for (const zoom of [3, 5, 8, 20, 60]) {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('60', '30')
    editor.editor.run('truck', addSpot('truck', [0, 0]))
    editor.editor.run('truck', addSpot('truck', [14 * ft, 0]))
    const { written } = drawnNames(editor, { x: 200, y: 300, zoom })
    const names = written.filter(({ text }) => text.startsWith('Truck'))
    names.forEach(({ box }, i) => {
      expect(names.slice(i + 1).some(other => meet(box, other.box))).toBe(false)
    })
    if (zoom >= 6) expect(2 * markHalf('truck', zoom)[0]).toBeLessThan(14 * ft * zoom)
  }
  expect(markHalf('truck', 40)).toEqual([12, 24])
  expect(markHalf('truck', 5)).toEqual([6.5, 13])
})
