import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { EditResult } from '../../core/document/commands/editSite'
import { moveVertex } from '../../core/document/commands/moveVertex'
import { invariants } from '../../core/document/invariants'
import { lockPour } from '../../core/pours/editing/changePour'
import { repairPours } from '../../core/pours/replan/repairPours'
import { replanRest } from '../../core/pours/replan/replanRest'
import type { Site } from '../../shared/document/site'
import { acceptedSite, at, facesOf, ftM, plan } from './acceptedSlab'

const must = (result: EditResult): Site => {
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

/** A 60 × 30 ft slab in two pours of 900 ft², the left one locked, its right side then moved. */
const lockedHalf = (): Site => {
  const site = acceptedSite([
    [0, 0],
    [60, 0],
    [60, 30],
    [0, 30],
  ])
  return must(lockPour(site, leftPour(site).id, { shape: true }))
}

const leftPour = (site: Site) => site.accepted[0]!.pours.toSorted((a, b) => a.seed[0] - b.seed[0])[0]!
const areaOf = (site: Site, id: string) => facesOf(site).faces.find(({ pourId }) => pourId === id)?.areaM2

const moveSide = (site: Site, rightFt: number): Site => {
  const [, lower, upper] = site.slabs[0]!.outline.vertices
  return must(moveVertex(upper!.id, at(rightFt, 30))(must(moveVertex(lower!.id, at(rightFt, 0))(site))))
}

const repairOf = (site: Site) => {
  const { slabId, part } = site.accepted[0]!
  const rest = replanRest(site, slabId, part, { budget: 'small' })
  return repairPours(site, slabId, part, rest.ok ? rest.value.offer : null)
}

describe('an outline that moves beside a locked pour', () => {
  it('leaves the pour and its joint where they were', () => {
    const site = lockedHalf()
    const id = leftPour(site).id
    const moved = moveSide(site, 75)
    expect(areaOf(moved, id)).toBeCloseTo(900 * ftM * ftM, 9)
    expect(invariants(moved)).toEqual([])
    expect(moved.accepted[0]!.joints[0]!.ends.map(({ last }) => last[0] / ftM)).toEqual([
      expect.closeTo(30, 9),
      expect.closeTo(30, 9),
    ])
  })

  it('holds its joint until the last pour along it is free', () => {
    const site = lockedHalf()
    const [left, right] = site.accepted[0]!.pours.toSorted((a, b) => a.seed[0] - b.seed[0])
    const isHeld = (of: Site) => of.accepted[0]!.joints.map(({ locked }) => locked)
    expect(isHeld(site)).toEqual([true])
    const both = must(lockPour(site, right!.id, { shape: true }))
    const one = must(lockPour(both, left!.id, { shape: false }))
    expect(isHeld(one)).toEqual([true])
    expect(isHeld(must(lockPour(one, right!.id, { shape: false })))).toEqual([false])
    // A locked day holds no joint.
    expect(isHeld(must(lockPour(must(lockPour(one, right!.id, { shape: false })), right!.id, { time: true })))).toEqual(
      [false],
    )
  })

  it('lets the joint follow its edges when nothing is locked', () => {
    const site = must(lockPour(lockedHalf(), leftPour(lockedHalf()).id, { shape: false }))
    const moved = moveSide(site, 80)
    expect(moved.accepted[0]!.joints[0]!.ends[0].last[0] / ftM).toBeCloseTo(40, 9)
  })

  it('tells that the other pour is over the largest area, on the plan too', () => {
    const moved = moveSide(lockedHalf(), 75)
    expect(plan(moved).problems.map(({ code }) => code)).toContain('pourOverCap')
  })

  it('of the locked pour itself says so', () => {
    const site = lockedHalf()
    const [first] = site.slabs[0]!.outline.vertices
    const moved = moveVertex(first!.id, at(-5, 0))(site)
    expect(moved.ok && moved.findings).toMatchObject([
      {
        code: 'lockedPourChanged',
        values: { number: leftPour(site).number, wasM2: expect.closeTo(900 * ftM * ftM, 6) },
      },
    ])
  })
})

describe('a repair', () => {
  it('splits what is over the largest area and keeps the locked pour, its number and its joint', () => {
    const site = moveSide(lockedHalf(), 75)
    const locked = leftPour(site)
    const repair = repairOf(site)
    if (!repair.ok) throw new Error(JSON.stringify(repair.error))
    const { site: mended, deeds, findings } = repair.value
    expect(deeds).toMatchObject([{ does: 'restSplit', pours: 2, kept: [locked.number] }])
    expect(findings).toEqual([])
    expect(invariants(mended)).toEqual([])
    expect(areaOf(mended, locked.id)).toBeCloseTo(900 * ftM * ftM, 9)
    expect(mended.accepted[0]!.pours.find(({ id }) => id === locked.id)).toEqual(locked)
    const { faces } = facesOf(mended)
    expect(faces).toHaveLength(3)
    expect(Math.max(...faces.map(({ areaM2 }) => areaM2))).toBeLessThanOrEqual(900 * ftM * ftM * (1 + 1e-9))
    expect(faces.reduce((sum, { areaM2 }) => sum + areaM2, 0)).toBeCloseTo(75 * 30 * ftM * ftM, 9)
  })

  it('takes away the pour and the joint that the outline left behind', () => {
    const site = moveSide(lockedHalf(), 29)
    const before = site.accepted[0]!.pours.length
    const repair = repairOf(site)
    if (!repair.ok) throw new Error(JSON.stringify(repair.error))
    expect(repair.value.deeds.map(({ does }) => does)).toEqual(['jointRemoved', 'pourRemoved'])
    expect(repair.value.site.accepted[0]!.pours).toHaveLength(before - 1)
    expect(repair.value.findings).toEqual([])
    expect(invariants(repair.value.site)).toEqual([])
  })

  it('merges pours whose joint is gone, the locked one stays', () => {
    const site = lockedHalf()
    const locked = leftPour(site)
    const without = { ...site, accepted: site.accepted.map(part => ({ ...part, joints: [] })) }
    const repair = repairPours(without, site.slabs[0]!.id, 'whole', null)
    if (!repair.ok) throw new Error(JSON.stringify(repair.error))
    expect(repair.value.deeds).toMatchObject([{ does: 'poursMerged', number: locked.number }])
    expect(repair.value.site.accepted[0]!.pours.map(({ id }) => id)).toEqual([locked.id])
    // The merged pour is over the largest area, and locked: that is left to be seen to.
    expect(repair.value.findings.map(({ code }) => code)).toEqual(['pourOverCap'])
  })

  it('of pours that fit is none', () => {
    expect(repairOf(lockedHalf())).toMatchObject({ ok: false, error: [{ code: 'nothingToPlan' }] })
  })

  it('leaves no piece without a pour and no locked pour changed, wherever a corner went', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 34, max: 110, noNaN: true }),
        fc.double({ min: 12, max: 60, noNaN: true }),
        (x, y) => {
          const site = lockedHalf()
          const locked = leftPour(site)
          const moved = moveVertex(site.slabs[0]!.outline.vertices[2]!.id, at(x, y))(site)
          if (!moved.ok) return
          const lockedM2 = areaOf(moved.value, locked.id)
          const repair = repairOf(moved.value)
          const mended = repair.ok ? repair.value.site : moved.value
          expect(invariants(mended)).toEqual([])
          const { faces, findings } = facesOf(mended)
          expect(findings).toEqual([])
          expect(areaOf(mended, locked.id)).toBeCloseTo(lockedM2!, 9)
          for (const { pourId, areaM2 } of faces)
            if (pourId !== locked.id) expect(areaM2).toBeLessThanOrEqual(900 * ftM * ftM * (1 + 1e-9))
        },
      ),
      { seed: 6, numRuns: 30 },
    )
  })
})
