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
