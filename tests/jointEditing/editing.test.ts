import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { EditResult } from '../../core/document/commands/editSite'
import { invariants } from '../../core/document/invariants'
import { acceptPours } from '../../core/pours/editing/acceptPours'
import { lockJoint, lockPour, redatePour, renumberAll, renumberPour } from '../../core/pours/editing/changePour'
import { mergePours } from '../../core/pours/editing/mergePours'
import { moveJoint, rotateJoint, shiftJoint } from '../../core/pours/editing/moveJoint'
import type { PourCaps } from '../../core/pours/editing/pourCaps'
import { splitPour } from '../../core/pours/editing/splitPour'
import { pourAdjacency } from '../../core/pours/pourAdjacency'
import type { PourFace } from '../../core/pours/pourFaces'
import { replanRest } from '../../core/pours/replan/replanRest'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import { acceptedSite, at, bareSite, facesOf, ftM } from './acceptedSlab'

const square = [
  [0, 0],
  [60, 0],
  [60, 60],
  [0, 60],
] as const
const bigL = [
  [0, 0],
  [80, 0],
  [80, 30],
  [40, 30],
  [40, 70],
  [0, 70],
] as const

const must = (result: EditResult): Site => {
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

const areaOf = (site: Site, pourId: string): number => facesOf(site).faces.find(f => f.pourId === pourId)?.areaM2 ?? 0
const wholeArea = (site: Site): number => facesOf(site).faces.reduce((sum, f) => sum + f.areaM2, 0)

/** Two pours of a 60 × 30 ft slab, the joint in the middle. */
const halves = (): Site => {
  const site = bareSite([
    [0, 0],
    [60, 0],
    [60, 30],
    [0, 30],
  ])
  const offer = replanRest(site, site.slabs[0]!.id, 'whole')
  if (!offer.ok) throw new Error('nothing to plan')
  return must(acceptPours(site, offer.value.offer))
}

const checkWhole = (site: Site, areaM2: number): void => {
  expect(invariants(site)).toEqual([])
  const { faces, findings } = facesOf(site)
  expect(findings).toEqual([])
  expect(faces.every(({ pourId }) => pourId !== null)).toBe(true)
  expect(Math.abs(wholeArea(site) - areaM2) / areaM2).toBeLessThan(1e-9)
}

describe('accepting a proposal', () => {
  it('gives every pour and joint an id, an anchor and a place of its own', () => {
    const site = acceptedSite(bigL)
    checkWhole(site, (80 * 30 + 40 * 40) * ftM * ftM)
    const { joints, pours } = site.accepted[0]!
    expect(pours.map(({ number }) => number)).toEqual(pours.map((_, i) => String(i + 1)))
    expect(new Set([...joints, ...pours].map(({ id }) => id)).size).toBe(joints.length + pours.length)
    for (const { ends } of joints) for (const { anchor } of ends) expect(anchor.on).not.toBe('free')
  })

  it('keeps id, number, date and notes of a pour that the new one covers by half', () => {
    const site = halves()
    const [first] = site.accepted[0]!.pours
    const dated = must(redatePour(site, first!.id, { date: '2026-08-03', start: { time: '06:30' }, order: 2 }))
    const again = replanRest(dated, dated.slabs[0]!.id, 'whole')
    if (!again.ok) throw new Error('nothing to plan')
    const offer = { ...again.value.offer, pours: [...again.value.offer.pours].reverse() }
    const accepted = must(acceptPours(dated, offer))
    const kept = accepted.accepted[0]!.pours.find(({ id }) => id === first!.id)
    expect(kept).toMatchObject({ number: first!.number, date: '2026-08-03', order: 2, start: { time: '06:30' } })
    checkWhole(accepted, 1800 * ftM * ftM)
  })

  it('keeps the numbers that pours were shown with, but no number twice', () => {
    const site = bareSite(square, [], 900)
    const made = replanRest(site, site.slabs[0]!.id, 'whole')
    if (!made.ok) throw new Error('nothing to plan')
    const { offer } = made.value
    const shown = ['2', '1', '2']
    const pours = offer.pours.map((pour, i) => ({ ...pour, number: shown[i] ?? '1' }))
    const numbers = must(acceptPours(site, { ...offer, pours })).accepted[0]!.pours.map(({ number }) => number)
    expect(numbers.slice(0, 2)).toEqual(['2', '1'])
    expect(new Set(numbers).size).toBe(numbers.length)
  })

  it('tells which pours found no successor', () => {
    const site = acceptedSite(square)
    const whole = bareSite(square, [], 9000)
    const one = replanRest(whole, whole.slabs[0]!.id, 'whole')
    if (!one.ok) throw new Error('nothing to plan')
    const result = acceptPours(site, one.value.offer)
    if (!result.ok) throw new Error('refused')
    expect(result.value.accepted[0]!.pours.length).toBe(1)
    expect(result.findings.filter(({ code }) => code === 'pourLost').length).toBe(site.accepted[0]!.pours.length - 1)
    expect(result.findings.some(({ code }) => code === 'pourOverCap')).toBe(true)
  })
})

describe('a joint', () => {
  it('shifted by 5 ft moves that much area from one pour to the other', () => {
    const site = halves()
    const { joints, pours } = site.accepted[0]!
    const moved = must(shiftJoint(site, joints[0]!.id, 5 * ftM))
    const gain = pours.map(({ id }) => Math.abs(areaOf(moved, id) - areaOf(site, id)))
    for (const m2 of gain) expect(m2).toBeCloseTo(5 * 30 * ftM * ftM, 9)
    checkWhole(moved, 1800 * ftM * ftM)
  })

  it('turned about its middle leaves both pours of a rectangle as large as they were', () => {
    const site = halves()
    const { joints, pours } = site.accepted[0]!
    const turned = must(rotateJoint(site, joints[0]!.id, 20))
    for (const { id } of pours) expect(areaOf(turned, id)).toBeCloseTo(areaOf(site, id), 9)
    checkWhole(turned, 1800 * ftM * ftM)
  })

  it('is held against what the crew takes where that rules, else against what was typed; the words say which', () => {
    const site = halves()
    const { joints } = site.accepted[0]!
    const told = (caps?: PourCaps): string[] => {
      const result = shiftJoint(site, joints[0]!.id, 0.5 * ftM, caps)
      if (!result.ok) throw new Error('refused')
      return result.findings.map(finding => wordProblem(finding, printMeasures('ftin')).message)
    }
    // Pours of 900 ft², half a foot off: 915 and 885 ft².
    expect(told()).toEqual(['Pour 2 is 915 ft², more than the 900 ft² you set as the largest pour.'])
    expect(told(() => ({ capM2: 1000 * ftM * ftM, rule: 'commonPractice' }))).toEqual([])
    expect(told(() => ({ capM2: 600 * ftM * ftM, rule: 'crewAndWeather', hands: 4 }))).toEqual([
      'Pour 1 is 885 ft², more than the 600 ft² that these 4 hands finish at one time in this weather.',
      'Pour 2 is 915 ft², more than the 600 ft² that these 4 hands finish at one time in this weather.',
    ])
    // Pour 1 has a day of its own, pour 2 an hour: their day plans tell what the crew takes then.
    const [first, second] = site.accepted[0]!.pours
    const dated: Site = {
      ...site,
      accepted: [
        {
          ...site.accepted[0]!,
          pours: [
            { ...first!, date: '2026-07-22' },
            { ...second!, date: '2026-07-21', start: { time: '06:00' } },
          ],
        },
      ],
    }
    const byDay = (practiceFt2: number): string[] => {
      const ofDay = { date: '2026-07-21', practiceM2: practiceFt2 * ftM * ftM }
      const result = shiftJoint(dated, joints[0]!.id, 0.5 * ftM, () => ({
        ...{ capM2: 600 * ftM * ftM, rule: 'crewAndWeather', hands: 4, ofDay },
      }))
      if (!result.ok) throw new Error('refused')
      return result.findings.flatMap(({ code, at }) => (code === 'pourOverCap' ? [at!.entityId] : []))
    }
    expect(byDay(1000)).toEqual([])
    expect(byDay(900)).toEqual([second!.id])
  })

  it('carries along the joints that end on it, and is told when a pour gets too large', () => {
    const site = acceptedSite(square)
    const tee = site.accepted[0]!.joints.find(j => j.ends.some(({ anchor }) => anchor.on === 'joint'))!
    const host = tee.ends.flatMap(({ anchor }) => (anchor.on === 'joint' ? [anchor.jointId] : []))[0]!
    const result = shiftJoint(site, host, 3 * ftM)
    if (!result.ok) throw new Error('refused')
    checkWhole(result.value, 3600 * ftM * ftM)
    expect(result.findings.map(({ code }) => code)).toContain('pourOverCap')
    const pourIds = site.accepted[0]!.pours.map(({ id }) => id)
    expect(result.value.accepted[0]!.pours.map(({ id }) => id)).toEqual(pourIds)
  })

  it('lies where it lay when it is locked, and when it is freed after the slab was drawn otherwise', () => {
    const site = halves()
    const [joint] = site.accepted[0]!.joints
    const locked = must(lockJoint(site, joint!.id, true))
    const areas = (of: Site): number[] => of.accepted[0]!.pours.map(({ id }) => areaOf(of, id))
    expect(areas(locked)).toEqual(areas(site))
    // 6 ft more at one end: ends fixed to a share of an edge would be carried along.
    const [slab] = locked.slabs
    const vertices = slab!.outline.vertices.map(vertex => {
      const [x, y] = vertex.at
      return x > ftM ? { ...vertex, at: [x + 6 * ftM, y] as const } : vertex
    })
    const longer = { ...locked, slabs: [{ ...slab!, outline: { ...slab!.outline, vertices } }] } as unknown as Site
    const freed = must(lockJoint(longer, joint!.id, false))
    for (const [i, areaM2] of areas(freed).entries()) expect(areaM2).toBeCloseTo(areas(longer)[i]!, 9)
    expect(areas(freed)).not.toEqual(areas(site))
  })

  it('stays when it is locked, when it would miss the slab, and beside a poured or locked pour', () => {
    const site = halves()
    const { joints, pours } = site.accepted[0]!
    const id = joints[0]!.id
    const codeOf = (result: EditResult) => (result.ok ? 'done' : result.error[0]!.code)
    expect(codeOf(shiftJoint(must(lockJoint(site, id, true)), id, 1))).toBe('jointLocked')
    expect(codeOf(moveJoint(site, id, [at(100, 0), at(100, 30)]))).toBe('jointOffSlab')
    expect(codeOf(shiftJoint(must(lockPour(site, pours[0]!.id, { shape: true })), id, 1))).toBe('pourLocked')
    expect(codeOf(shiftJoint(asBuilt(site, pours[0]!.id), id, 1))).toBe('pourIsPoured')
    expect(codeOf(moveJoint(site, 'j999', [at(1, 0), at(1, 30)]))).toBe('entityMissing')
    expect(codeOf(shiftJoint(must(lockJoint(must(lockJoint(site, id, true)), id, false)), id, 1))).toBe('done')
  })
})

describe('split and merge', () => {
  it('undo each other: the larger part keeps the pour', () => {
    const site = halves()
    const [first] = site.accepted[0]!.pours
    const face = facesOf(site).faces.find(f => f.pourId === first!.id)!
    const xs = face.region.outer.map(({ from }) => from[0])
    const x = Math.min(...xs) + 0.3 * (Math.max(...xs) - Math.min(...xs))
    const result = splitPour(site, first!.id, [
      [x, 1],
      [x, 2],
    ])
    const split = must(result)
    checkWhole(split, 1800 * ftM * ftM)
    expect(areaOf(split, first!.id)).toBeCloseTo(0.7 * face.areaM2, 6)
    const added = split.accepted[0]!.pours.at(-1)!
    expect(added.number).toBe('3')
    expect(result.ok && result.made).toEqual([split.accepted[0]!.joints.at(-1)!.id, added.id])
    const merged = must(mergePours(split, first!.id, added.id))
    expect(merged.accepted[0]!.pours).toEqual(site.accepted[0]!.pours)
    expect(merged.accepted[0]!.joints).toEqual(site.accepted[0]!.joints)
  })

  it('keep a joint where it still parts others', () => {
    const site = acceptedSite(square)
    const { pours } = site.accepted[0]!
    const { faces, joints } = facesOf(site)
    const shared = joints.find(({ pourIds }) => pourIds.length > 2)!
    const among = faces.filter(({ pourId }) => shared.pourIds.includes(pourId!))
    const { a, b } = pourAdjacency(among.map(({ pourId, region }) => ({ id: pourId!, region }))).pairs.find(
      pair => alongJoint(among, pair.a, shared.id) && alongJoint(among, pair.b, shared.id),
    )!
    const merged = mergePours(site, a, b)
    if (!merged.ok) throw new Error(JSON.stringify(merged.error))
    expect(merged.value.accepted[0]!.pours.length).toBe(pours.length - 1)
    checkWhole(merged.value, 3600 * ftM * ftM)
  })

  it('refuse a line that divides nothing and pours that do not touch', () => {
    const site = acceptedSite([
      [0, 0],
      [120, 0],
      [120, 20],
      [0, 20],
    ])
    const { pours } = site.accepted[0]!
    const miss = splitPour(site, pours[0]!.id, [at(500, 0), at(500, 10)])
    expect(miss.ok ? '' : miss.error[0]!.code).toBe('splitMisses')
    const { joints } = facesOf(site)
    const touching = (a: string, b: string) => joints.some(j => j.pourIds.includes(a) && j.pourIds.includes(b))
    const apart = pours.flatMap(p =>
      pours.filter(q => q !== p && !touching(p.id, q.id)).map(q => [p.id, q.id] as const),
    )
    const result = mergePours(site, ...apart[0]!)
    expect(result.ok ? '' : result.error[0]!.code).toBe('notNeighbors')
  })
})

describe('numbers and dates', () => {
  it('a number belongs to one pour', () => {
    const site = halves()
    const [a, b] = site.accepted[0]!.pours
    const taken = renumberPour(site, a!.id, b!.number)
    expect(taken.ok ? '' : taken.error[0]!.code).toBe('numberTaken')
    expect(must(renumberPour(site, a!.id, ' 7 ')).accepted[0]!.pours[0]!.number).toBe('7')
    const turned = must(renumberAll(site, [b!.id, a!.id]))
    expect(turned.accepted[0]!.pours.map(({ number }) => number)).toEqual(['2', '1'])
  })

  it('a date can be set and taken away; one that no calendar has is refused', () => {
    const site = halves()
    const { id } = site.accepted[0]!.pours[0]!
    const dated = must(redatePour(site, id, { date: '2026-08-04', order: 1 }))
    expect(dated.accepted[0]!.pours[0]).toMatchObject({ date: '2026-08-04', order: 1 })
    expect(must(redatePour(dated, id, { date: null, order: null }))).toEqual(site)
    const bad = redatePour(site, id, { date: '2026-02-30' })
    expect(bad.ok ? '' : bad.error[0]!.code).toBe('badDate')
  })
})

const alongJoint = (faces: readonly PourFace[], pourId: string, jointId: string): boolean =>
  faces.some(f => f.pourId === pourId && f.region.outer.some(({ edgeId }) => edgeId === jointId))

/** The site with one pour poured as it is drawn. */
function asBuilt(site: Site, pourId: string): Site {
  const face = facesOf(site).faces.find(f => f.pourId === pourId)!
  let { nextId } = site
  const id = (kind: string) => `${kind}${nextId++}`
  const logId = id('l')
  const ring = face.region.outer
  const outline = {
    id: id('r'),
    vertices: ring.map(({ from }) => ({ id: id('v'), at: from })),
    edges: ring.map(() => ({ id: id('e') })),
  }
  const poured = { outline, holes: [], areaM2: face.areaM2, logId }
  return {
    ...site,
    nextId,
    log: [...(site.log ?? []), { id: logId, pourId, date: '2026-07-20', loads: [], strips: [], used: [], notes: '' }],
    accepted: site.accepted.map(part => ({
      ...part,
      pours: part.pours.map(pour => (pour.id === pourId ? { ...pour, poured } : pour)),
    })),
  }
}

describe('planning the rest anew', () => {
  it('leaves what is poured or locked and splits only the rest', () => {
    const site = acceptedSite(bigL)
    const [first, second] = site.accepted[0]!.pours
    const built = must(lockPour(asBuilt(site, first!.id), second!.id, { shape: true }))
    const smaller = { ...built, capacity: { capM2: 500 * ftM * ftM } }
    const again = replanRest(smaller, smaller.slabs[0]!.id, 'whole', { budget: 'small' })
    if (!again.ok) throw new Error(JSON.stringify(again.error))
    const result = acceptPours(smaller, again.value.offer)
    const after = must(result)
    checkWhole(after, (80 * 30 + 40 * 40) * ftM * ftM)
    for (const pour of [first!, second!]) expect(areaOf(after, pour.id)).toBeCloseTo(areaOf(site, pour.id), 9)
    const kept = after.accepted[0]!.pours
    expect(kept.find(({ id }) => id === first!.id)).toEqual(smaller.accepted[0]!.pours[0])
    for (const { id } of kept.filter(p => p.id !== first!.id && p.id !== second!.id))
      expect(areaOf(after, id)).toBeLessThanOrEqual(500 * ftM * ftM * (1 + 1e-9))
  })

  it('says when nothing is left', () => {
    const site = halves()
    const locked = site.accepted[0]!.pours.reduce((s, { id }) => must(lockPour(s, id, { shape: true })), site)
    const again = replanRest(locked, locked.slabs[0]!.id, 'whole')
    expect(again.ok ? '' : again.error[0]!.code).toBe('nothingToPlan')
  })

  it('tells when an edit of the outline cuts what is poured', () => {
    const site = halves()
    const { pours } = site.accepted[0]!
    const built = asBuilt(site, pours[0]!.id)
    const slab = built.slabs[0]!
    const vertices = slab.outline.vertices.map(v => ({
      ...v,
      at: [v.at[0], v.at[1] > 1 ? v.at[1] - 1 : v.at[1]] as const,
    }))
    const cut = { ...built, slabs: [{ ...slab, outline: { ...slab.outline, vertices } }] }
    expect(facesOf(cut).findings.map(({ code }) => code)).toContain('differsFromAsBuilt')
    const again = replanRest(cut, slab.id, 'whole')
    expect(again.ok && again.value.findings.map(({ code }) => code)).toContain('differsFromAsBuilt')
  })
})

describe('any run of edits', () => {
  it('keeps the invariants, the whole area and every pour', { timeout: 60_000 }, () => {
    const start = acceptedSite(bigL)
    const areaM2 = (80 * 30 + 40 * 40) * ftM * ftM
    const step = fc.record({
      kind: fc.constantFrom('shift', 'rotate', 'split', 'merge'),
      which: fc.nat(20),
      other: fc.nat(20),
      by: fc.double({ min: -1, max: 1, noNaN: true }),
    })
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 5 }), steps => {
        let site = start
        for (const { kind, which, other, by } of steps) {
          const { joints, pours } = site.accepted[0]!
          const joint = joints[which % Math.max(1, joints.length)]
          const pour = pours[which % pours.length]!
          const mate = pours[other % pours.length]!
          const before = JSON.stringify(site)
          const result =
            kind === 'merge' || !joint
              ? mergePours(site, pour.id, mate.id)
              : kind === 'shift'
                ? shiftJoint(site, joint.id, by)
                : kind === 'rotate'
                  ? rotateJoint(site, joint.id, 15 * by)
                  : splitPour(site, pour.id, [pour.seed, [pour.seed[0] + by, pour.seed[1] + 1 - Math.abs(by)]])
          expect(JSON.stringify(site)).toBe(before)
          if (!result.ok) continue
          expect(invariants(result.value)).toEqual([])
          expect(Math.abs(wholeArea(result.value) - areaM2) / areaM2).toBeLessThan(1e-9)
          const { faces, findings } = facesOf(result.value)
          const placed = new Set(faces.map(({ pourId }) => pourId))
          const told = findings.flatMap(({ at: place, values }) => [
            place?.entityId,
            ...String(values.others ?? '').split(', '),
          ])
          for (const { id } of result.value.accepted[0]!.pours) expect(placed.has(id) || told.includes(id)).toBe(true)
          site = result.value
        }
      }),
      { seed: 20260721, numRuns: 60 },
    )
  })
})
