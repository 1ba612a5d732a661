import { describe, expect, it } from 'vitest'
import { pourFaces } from '../../core/pours/pourFaces'
import { proposePours } from '../../core/pours/proposePours'
import type { AcceptedPours, Joint } from '../../shared/document/pours'
import type { Pt } from '../../shared/document/primitives'
import { acceptProposal } from './acceptProposal'
import { ft2M2, namedSlabs, planter, rectangle, region } from './shapes'

const ftM = 0.3048
const at = (x: number, y: number): Pt => [x * ftM, y * ftM]

const joint = (id: string, a: Pt, b: Pt, more: Partial<Joint> = {}): Joint => ({
  id,
  ends: [
    { anchor: { on: 'free' }, last: a },
    { anchor: { on: 'free' }, last: b },
  ],
  locked: false,
  kind: 'construction',
  ...more,
})

const accepted = (joints: Joint[], seeds: Pt[]): AcceptedPours => ({
  slabId: 's1',
  part: 'whole',
  joints,
  pours: seeds.map((seed, i) => ({
    id: `p${i + 1}`,
    number: String(i + 1),
    seed,
    lock: { shape: false, time: false },
  })),
})

const square = region(rectangle(0, 0, 40, 40))

describe('pours under accepted joints', () => {
  it('come back as proposed on every named slab', () => {
    for (const { name, region: slab } of namedSlabs()) {
      const proposal = proposePours({ slabId: 's1', part: 'whole', region: slab, capM2: 900 * ft2M2, budget: 'small' })
      const { faces, joints, findings } = pourFaces(slab, acceptProposal(proposal))
      expect(findings, name).toEqual([])
      expect(faces.length, name).toBe(proposal.pours.length)
      for (const face of faces) {
        const i = Number(face.pourId!.slice(1)) - 1
        expect(Math.abs(face.areaM2 - proposal.pours[i]!.areaM2), name).toBeLessThan(1e-9 * face.areaM2)
      }
      joints.forEach((row, i) => {
        expect([...row.pourIds].sort(), name).toEqual(proposal.joints[i]!.pours.map(p => `p${p + 1}`).sort())
      })
    }
  })

  it('follow a joint that another one ends on', () => {
    const tee = joint('j2', at(20, 20), at(40, 20), {
      ends: [
        { anchor: { on: 'joint', jointId: 'j1', t: 0.5 }, last: at(1, 1) },
        { anchor: { on: 'free' }, last: at(40, 20) },
      ],
    })
    const { faces, findings } = pourFaces(
      square,
      accepted([joint('j1', at(20, 0), at(20, 40)), tee], [at(10, 20), at(30, 10), at(30, 30)]),
    )
    expect(findings).toEqual([])
    expect(faces.map(f => Math.round(f.areaM2 / ft2M2)).sort()).toEqual([400, 400, 800])
  })

  it('cross where two joints cross', () => {
    const { faces } = pourFaces(
      square,
      accepted([joint('j1', at(20, 0), at(20, 40)), joint('j2', at(0, 10), at(40, 10))], [at(1, 1)]),
    )
    expect(faces.map(f => Math.round(f.areaM2 / ft2M2)).sort()).toEqual([200, 200, 600, 600])
  })

  it('stretch a free end to the edge it now meets, and trim one that sticks out', () => {
    const { faces, joints, findings } = pourFaces(
      square,
      accepted([joint('j1', at(20, 3), at(20, 55))], [at(10, 20), at(30, 20)]),
    )
    expect(findings).toEqual([])
    expect(faces.length).toBe(2)
    expect(joints[0]!.lengthM).toBeCloseTo(40 * ftM, 9)
  })

  it('are cut by a joint that an opening interrupts', () => {
    const slab = region(rectangle(0, 0, 40, 40), planter(15, 15, 10, 10))
    const { faces, joints } = pourFaces(
      slab,
      accepted([joint('j1', at(0, 20), at(40, 20), { locked: true })], [at(20, 5), at(20, 35)]),
    )
    expect(faces.length).toBe(2)
    expect(joints.map(j => j.lengthM / ftM)).toEqual([expect.closeTo(15, 9), expect.closeTo(15, 9)])
  })

  it('say so when pours merge, a part has none, or one is lost', () => {
    const none = pourFaces(square, accepted([], [at(10, 10), at(30, 30), at(99, 99)]))
    expect(none.findings.map(f => f.code)).toEqual(['poursMerged', 'pourLost'])
    const bare = pourFaces(square, accepted([joint('j1', at(20, 0), at(20, 40))], [at(10, 10)]))
    expect(bare.findings.map(f => f.code)).toEqual(['unplannedPart'])
    expect(bare.faces.map(f => f.pourId)).toContain(null)
  })

  it('say so when a joint misses the slab or its anchor is gone', () => {
    const outside = pourFaces(square, accepted([joint('j1', at(90, 0), at(90, 40))], [at(10, 10)]))
    expect(outside.findings.map(f => f.code)).toEqual(['jointOutside'])
    const lost = joint('j1', at(20, 0), at(20, 40), {
      ends: [
        { anchor: { on: 'edge', edgeId: 'e9999', t: 0.5 }, last: at(20, 0) },
        { anchor: { on: 'free' }, last: at(20, 40) },
      ],
    })
    const { findings, faces } = pourFaces(square, accepted([lost], [at(10, 10), at(30, 10)]))
    expect(findings.map(f => f.code)).toEqual(['anchorLost'])
    expect(faces.length).toBe(2)
  })

  it('say so when a pour differs from what was poured', () => {
    const log = accepted([], [at(10, 10)])
    const poured = { outline: { id: 'k1', vertices: [], edges: [] }, holes: [], areaM2: 140, logId: 'l1' }
    const { findings } = pourFaces(square, { ...log, pours: [{ ...log.pours[0]!, poured }] })
    expect(findings.map(f => f.code)).toEqual(['differsFromAsBuilt'])
  })
})
