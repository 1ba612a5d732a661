import { describe, expect, it } from 'vitest'
import { drawWishes } from '../../core/reports/drawWishes'
import type { PlanLayers } from '../../core/reports/planDrawing'
import { planSheets } from '../../core/reports/planSvg'
import type { SheetData, SheetWish } from '../../core/reports/sheetData'
import { fullPlan as layers, patio } from './patio'
import { ringOf } from './shapes'

const wishes: readonly SheetWish[] = [
  {
    id: 'y1',
    kind: 'required',
    line: [
      [0, 3],
      [15, 3],
    ],
  },
  {
    id: 'y2',
    kind: 'forbiddenLine',
    line: [
      [2, 1],
      [4, 2],
      [7, 1],
    ],
  },
  {
    id: 'y3',
    kind: 'forbiddenArea',
    ring: ringOf('w', [
      [4, 15],
      [12, 15],
      [12, 22],
      [4, 22],
    ]),
  },
  {
    id: 'y4',
    kind: 'direction',
    line: [
      [4, 6],
      [7, 9],
    ],
  },
]
const frame = { ptPerM: 20, originPt: [100, 500] as const }
const legends = [
  'joint asked for here',
  'no joint across this line',
  'no joint in this area',
  'joints asked to run along this',
]
const sheet = (changes: Partial<SheetData>, shown: Partial<PlanLayers> = {}): string =>
  planSheets({ ...patio, ...changes }, { title: 'Plan and pours', layers: { ...layers, ...shown } })
    .map(({ svg }) => svg)
    .join('')

describe('what is asked of the joints, on a sheet', () => {
  it('is drawn in ink and white alone, each kind by a shape of its own', () => {
    const drawn = wishes.map(wish => drawWishes([wish], frame).svg)
    for (const svg of drawn) {
      const colors = [...svg.matchAll(/(?:fill|stroke)="([^"]*)"/g)].map(([, color]) => color)
      expect(colors.filter(color => !['#1C2125', '#FFFFFF', 'none'].includes(color ?? ''))).toEqual([])
    }
    // Sub-paths with their number of corners: what a photocopy keeps.
    const shapes = drawn.map(svg =>
      [...svg.matchAll(/d="([^"]*)"/g)].map(([, d = '']) => d.replace(/[-\d. ]+/g, '')).join(),
    )
    expect(new Set(shapes).size).toBe(wishes.length)
    expect(drawn[2]).toContain('stroke-dasharray="2 3.5"')
  })

  it('has a row in the legend for each kind there is, and for no other', () => {
    const all = sheet({ wishes })
    for (const words of legends) expect(all).toContain(words)
    const one = sheet({ wishes: wishes.slice(1, 2) })
    expect(legends.filter(words => one.includes(words))).toEqual([legends[1]])
    const none = sheet({})
    expect(legends.filter(words => none.includes(words))).toEqual([])
    expect(sheet({ wishes }, { joints: false })).toBe(sheet({}, { joints: false }))
  })

  it('keeps north on the sheet however long the legend grows', () => {
    const north = (svg: string) => [...svg.matchAll(/>N</g)].length
    expect(north(sheet({}))).toBe(1)
    expect(north(sheet({ wishes }))).toBe(1)
  })
})
