import { describe, expect, it } from 'vitest'
import { addFurnishing, addNote, addTape, setTapeMeasured } from '../../core/document/commands/addShown'
import { addSlab } from '../../core/document/commands/addSlab'
import { copySelection } from '../../core/document/commands/copySelection'
import { deleteSelection } from '../../core/document/commands/deleteSelection'
import { deleteVertex } from '../../core/document/commands/deleteVertex'
import { boxOf } from '../../core/document/commands/lineUp'
import { mirrorSelection, moveSelection, turnSelection } from '../../core/document/commands/moveSelection'
import { moveVertex } from '../../core/document/commands/moveVertex'
import { splitEdge } from '../../core/document/commands/splitEdge'
import { describeChanges } from '../../core/document/describeChanges'
import { diffSites } from '../../core/document/diffSites'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import { tapeLength } from '../../core/document/tapeEnds'
import { printMeasures } from '../../core/units/printMeasures'
import { emptySite } from '../../renderer/app/emptySite'
import { chain, done, faultsOf } from './edit'

const patio = () =>
  chain(
    emptySite('t', 'Test'),
    addSlab({ name: 'Patio', outline: { kind: 'rectangle', at: [0, 0], widthM: 4, depthM: 3 } }),
  )
const corners = (site: ReturnType<typeof patio>) => site.slabs[0]!.outline.vertices

describe('a tape dimension', () => {
  it('follows the corners it was hung on: 3, 4, 5', () => {
    let site = chain(patio(), addTape([0, 0], [4, 3]))
    expect(site.tapes![0]!.ends.map(({ on }) => on.on)).toEqual(['vertex', 'vertex'])
    expect(tapeLength(site.tapes![0]!)).toBe(5)
    site = chain(site, moveVertex(corners(site)[2]!.id, [12, 5]))
    expect(tapeLength(site.tapes![0]!)).toBe(13)
    site = chain(site, moveSelection([site.slabs[0]!.id], [7, 7]))
    expect(site.tapes![0]!.ends[0].last).toEqual([7, 7])
    expect(faultsOf(site)).toEqual([])
  })
  it('stays at its place on an edge that is cut in two', () => {
    const site = chain(patio(), addTape([3, 0], [3, 3]))
    const after = chain(site, splitEdge(site.slabs[0]!.outline.edges[0]!.id, 0.5))
    expect(after.tapes![0]!.ends[0].last).toEqual([3, 0])
    expect(after.tapes![0]!.ends[0].on.on).toBe('edge')
    expect(faultsOf(after)).toEqual([])
  })
  it('keeps its place when its corner is deleted, and says so', () => {
    const site = chain(patio(), addTape([0, 0], [4, 3]))
    const result = deleteVertex(corners(site)[2]!.id)(site)
    expect(done(result).tapes![0]!.ends[1]).toEqual({ on: { on: 'free' }, last: [4, 3] })
    expect(result.ok && result.findings.map(({ code }) => code)).toContain('anchorLost')
  })
  it('holds what was measured in the field beside its own length', () => {
    const site = chain(patio(), addTape([0, 0], [4, 3]))
    const id = site.tapes![0]!.id
    const measured = chain(site, setTapeMeasured(id, 5.02))
    expect(measured.tapes![0]!.measuredM).toBe(5.02)
    const read = readSite(serializeSite(measured))
    expect(read.ok && read.value).toEqual(measured)
    const told = describeChanges(diffSites(site, measured), site, measured, printMeasures('metric')).join(' ')
    expect(told).toContain('Tape dimension 1: length measured in the field')
    expect(chain(measured, setTapeMeasured(id, undefined))).toEqual(site)
  })
  it('is copied as a line in the open and deleted like anything else', () => {
    const site = chain(patio(), addTape([0, 0], [4, 3]))
    const id = site.tapes![0]!.id
    const copied = chain(site, copySelection([id], [1, 1]))
    expect(copied.tapes![1]!.ends.map(({ last }) => last)).toEqual([
      [1, 1],
      [5, 4],
    ])
    expect(chain(copied, deleteSelection([id])).tapes).toHaveLength(1)
  })
})

describe('furniture', () => {
  it('turns and mirrors with its heading, and keeps its size', () => {
    const site = chain(patio(), addFurnishing('car', [1, 2], 0))
    const id = site.furnishings![0]!.id
    const turned = chain(site, turnSelection([id], [0, 0], 90)).furnishings![0]!
    expect(turned.at).toEqual([-2, 1])
    expect(turned.turnDeg).toBe(90)
    expect(chain(site, mirrorSelection([id], [0, 0], [0, 1])).furnishings![0]).toMatchObject({
      at: [-1, 2],
      turnDeg: 180,
    })
    const box = boxOf(chain(site, turnSelection([id], [1, 2], 90)), id)!
    expect(box.maxX - box.minX).toBeCloseTo(16 * 0.3048, 9)
  })
  it('and notes are copied with ids of their own', () => {
    const site = chain(patio(), addFurnishing('chair', [1, 1], 45), addNote([2, 2], 's1'))
    const ids = [site.furnishings![0]!.id, site.notes![0]!.id]
    const copied = chain(site, copySelection(ids, [1, 0]))
    expect(copied.notes!.map(({ text }) => text)).toEqual(['s1', 's1'])
    expect(copied.furnishings![1]!.at).toEqual([2, 1])
    expect(faultsOf(copied)).toEqual([])
  })
})
