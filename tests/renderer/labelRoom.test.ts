import { describe, expect, it } from 'vitest'
import { labelRoom } from '../../renderer/editor/layers/labelRoom'
import type { Pt } from '../../shared/document/primitives'

const view = { x: 0, y: 0, width: 400, height: 300 }
const [right, left]: readonly [Pt, Pt] = [
  [150, 100],
  [50, 100],
]

describe('where a label stands', () => {
  it('is the first wished place that is free and in view', () => {
    const room = labelRoom(view)
    expect(room.take([[-10, 100], right, left], 40, 20)).toEqual(right)
    expect(room.take([right, left], 40, 20)).toEqual(left)
    expect(room.take([right, left], 40, 20)).toBeNull()
  })

  it('is beside a line rather than on it, whichever way the line runs', () => {
    const ends: readonly (readonly [Pt, Pt])[] = [
      [
        [150, 0],
        [150, 300],
      ],
      [
        [0, 95],
        [400, 105],
      ],
      [
        [140, 97],
        [160, 103],
      ],
      [
        [110, 60],
        [200, 150],
      ],
    ]
    for (const line of ends) {
      const room = labelRoom(view)
      room.spareLine(line)
      const clear: Pt = [150, 200]
      const isUpright = line[0][0] === line[1][0]
      expect(room.take([right, isUpright ? left : clear], 40, 20), JSON.stringify(line)).not.toEqual(right)
    }
  })

  it('is not driven away by a line that passes by', () => {
    const room = labelRoom(view)
    room.spareLine([
      [120, 60],
      [180, 85],
    ])
    room.spareLine([
      [125, 118],
      [175, 142],
    ])
    expect(room.take([right, left], 40, 20)).toEqual(right)
  })

  it('is whole in view, whichever edge is near', () => {
    const shifted = { x: 10, y: 20, width: 400, height: 300 }
    const cutOff: readonly Pt[] = [
      [29, 100],
      [391, 100],
      [200, 29],
      [200, 311],
    ]
    for (const at of cutOff) expect(labelRoom(shifted).take([at], 40, 20), String(at)).toBeNull()
    for (const at of [[30, 30] as const, [390, 310] as const]) expect(labelRoom(shifted).take([at], 40, 20)).toEqual(at)
  })

  it('is beside a line that takes one of its corners, and not driven away by one that ends short of it', () => {
    const lines = (ends: readonly (readonly [number, number, number, number])[]) =>
      ends.map(([ax, ay, bx, by]) => {
        const room = labelRoom(view)
        room.spareLine([
          [ax, ay],
          [bx, by],
        ])
        return room.take([right, left], 40, 20)
      })
    const throughCorners = [
      [140, 85, 125, 100],
      [160, 85, 175, 100],
      [125, 100, 140, 115],
      [175, 100, 160, 115],
    ] as const
    expect(lines(throughCorners)).toEqual([left, left, left, left])
    const endingShort = [
      [80, 80, 120, 96],
      [180, 103, 300, 160],
      [150, 0, 150, 80],
      [150, 120, 150, 300],
    ] as const
    expect(lines(endingShort)).toEqual([right, right, right, right])
  })

  it('is never on a place taken without asking', () => {
    const room = labelRoom(view)
    room.block({ x: 140, y: 95, width: 20, height: 10 })
    expect(room.take([right, left], 40, 20)).toEqual(left)
    expect(room.take([right], 40, 20)).toBeNull()
  })

  it('is on a spared place or line where there is no other, and never on a taken one', () => {
    const room = labelRoom(view)
    room.spare({ x: 140, y: 90, width: 20, height: 20 })
    room.spareLine([
      [50, 0],
      [50, 300],
    ])
    expect(room.take([right, left], 40, 20, false)).toBeNull()
    expect(room.take([right, left], 40, 20)).toEqual(right)
    expect(room.take([right, left], 40, 20)).toEqual(left)
    expect(room.take([right, left], 40, 20)).toBeNull()
  })
})
