import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { createMemo } from '../../core/plan/memo'
import { planDate } from '../../core/plan/planDate'
import { printPlanJson } from '../../core/plan/printPlanJson'
import type { Site } from '../../shared/document/site'
import { PlanJson } from '../../shared/planJson'
import { planOf, sampleSite, samplesFolder } from './sampleSite'

const names = readdirSync(samplesFolder)
  .filter(name => name.endsWith('.slabwright.json'))
  .map(name => name.replace('.slabwright.json', ''))
const small = names.filter(name => !/plaza|court-100/.test(name))

describe('the plan of every sample', () => {
  it('finds the samples', () => expect(names.length).toBeGreaterThanOrEqual(9))

  it.each(small)('%s: fits the published shape of the JSON object', name => {
    const printed = printPlanJson(planOf(sampleSite(name)))
    expect(PlanJson.safeParse(JSON.parse(JSON.stringify(printed))).error).toBeUndefined()
  })

  it.each(small)('%s: pours tile each slab, none over the cap', name => {
    const site = sampleSite(name)
    const plan = planOf(site)
    for (const slab of plan.slabs) {
      const pours = plan.pours.filter(p => p.slabId === slab.id)
      const sum = pours.reduce((total, p) => total + p.areaM2, 0)
      expect(Math.abs(sum - slab.netAreaM2) / slab.netAreaM2).toBeLessThanOrEqual(1e-9)
      for (const p of pours) expect(p.areaM2).toBeLessThanOrEqual((site.capacity?.capM2 ?? 74.322432) * (1 + 1e-9))
    }
  })

  it.each(small)('%s: borders, bands, insets and field make up the net area', name => {
    for (const slab of planOf(sampleSite(name)).slabs) {
      const claimed = [...slab.borders, ...slab.bands, ...slab.insets].reduce((sum, c) => sum + c.areaM2, 0)
      expect(Math.abs(claimed + slab.fieldAreaM2 - slab.netAreaM2) / slab.netAreaM2).toBeLessThanOrEqual(1e-9)
    }
  })

  it.each(small)('%s: every share lies between 0 and 1 and is null only while the sun is too low', name => {
    const { shade, pours, slabs } = planOf(sampleSite(name))
    const rows = [...shade.slabShares, ...shade.pourShares]
    expect(rows).toHaveLength(slabs.length + pours.length)
    for (const [, shares] of rows) {
      expect(shares).toHaveLength(shade.instants.length)
      shares.forEach((share, i) => {
        expect(share === null).toBe(shade.sun[i]!.altitudeDeg < shade.minSunAltitudeDeg)
        if (share !== null) expect(share >= 0 && share <= 1 + 1e-12).toBe(true)
      })
    }
  })

  it('a slab’s share is the area-weighted mean of the shares of its pours, within the cells along the joints', () => {
    const { shade, pours, slabs } = planOf(sampleSite('l-patio'))
    const slab = slabs[0]!
    shade.slabShares.get(slab.id)!.forEach((share, i) => {
      if (share === null) return
      const mean = pours.reduce((sum, p) => sum + shade.pourShares.get(p.id)![i]! * p.areaM2, 0) / slab.netAreaM2
      expect(Math.abs(mean - share)).toBeLessThan(0.002)
    })
  })

  it('the area shaded at an hour agrees with the share of that step', () => {
    const { shade, slabs } = planOf(sampleSite('l-patio'))
    const slab = slabs[0]!
    const opaqueHours = shade.shadows.filter(s => s.dapple.length === 0)
    expect(opaqueHours.length).toBeGreaterThan(3)
    for (const { ms, areaM2 } of opaqueHours) {
      const share = shade.slabShares.get(slab.id)![shade.instants.indexOf(ms)]!
      expect(Math.abs(1 - areaM2 / slab.netAreaM2 - share)).toBeLessThan(0.01)
    }
  })
})

describe('deriving again', () => {
  const site = sampleSite('l-patio')
  const request = { date: '2026-07-21' }
  const countAfter = (change: (site: Site) => Site) => {
    const memo = createMemo()
    planOf(site, request, memo)
    const before = new Map(memo.computed)
    planOf(change(site), request, memo)
    return Object.fromEntries(
      [...memo.computed].flatMap(([name, count]) => {
        const more = count - (before.get(name) ?? 0)
        return more > 0 ? [[name, more]] : []
      }),
    )
  }

  it('computes nothing when nothing changed', () => expect(countAfter(s => s)).toEqual({}))

  it('a moved tree costs its own solid, the shade and the points, and no area or pour', () => {
    const recomputed = countAfter(s => ({
      ...s,
      casters: s.casters.map(c => (c.kind === 'tree' ? { ...c, at: [c.at[0] + 1, c.at[1]] as const } : c)),
    }))
    expect(recomputed.resolveCaster).toBe(1)
    expect(recomputed.exposure).toBe(1)
    for (const part of ['resolveSlab', 'proposal', 'slabQuantities', 'pourQuantities', 'order'])
      expect(recomputed).not.toHaveProperty(part)
  })

  it('a moved tree gives the same shares as a plan made from nothing', () => {
    const moved: Site = {
      ...site,
      casters: site.casters.map(c => (c.kind === 'tree' ? { ...c, at: [c.at[0] + 1.3, c.at[1] - 0.4] as const } : c)),
    }
    const memo = createMemo()
    planOf(site, request, memo)
    expect(planOf(moved, request, memo).shade.slabShares).toEqual(planOf(moved, request).shade.slabShares)
  })

  it('a setting of the concrete costs figures only', () => {
    const recomputed = countAfter(s => ({ ...s, access: { ...s.access!, chuteReachM: 5 } }))
    expect(recomputed).not.toHaveProperty('resolveSlab')
    expect(recomputed).not.toHaveProperty('exposure')
    expect(recomputed).not.toHaveProperty('proposal')
    expect(recomputed.slabQuantities).toBe(1)
  })

  it('forgets what is gone', () => {
    const memo = createMemo()
    planOf(site, request, memo)
    planOf({ ...site, casters: [], points: [] }, request, memo)
    planOf(site, request, memo)
    expect(memo.computed.get('resolveCaster')).toBe(2 * site.casters.length)
  })
})

describe('the date of a plan', () => {
  const site = sampleSite('l-patio')
  const dated = sampleSite('l-patio-accepted')
  const firstPour = dated.accepted.flatMap(a => a.pours.map(p => p.date ?? '9')).sort()[0]!

  it('is the one asked for', () => expect(planDate(dated, '2027-01-02', '2026-01-01')).toBe('2027-01-02'))
  it('else that of the first planned pour', () => expect(planDate(dated, undefined, '2026-01-01')).toBe(firstPour))
  it('of which those that were poured do not count while one is to come', () => {
    const logged = sampleSite('logged-court')
    expect(planDate(logged, undefined, '2026-01-01')).toBe('2026-07-22')
    const [part] = logged.accepted
    const done = {
      ...logged,
      accepted: [{ ...part!, pours: part!.pours.filter(({ poured }) => poured !== undefined) }],
    }
    expect(planDate(done, undefined, '2026-01-01')).toBe('2026-07-14')
  })
  it('else that of the conditions', () => {
    const conditions = {
      kind: 'day',
      date: '2026-08-04',
      highC: 30,
      lowC: 15,
      dewPointC: 9,
      windMs: 2,
      sky: 'sunny',
    } as const
    expect(planDate({ ...site, conditions }, undefined, '2026-01-01')).toBe('2026-08-04')
  })
  it('else today', () => expect(planDate({ ...site, accepted: [] }, undefined, '2026-01-01')).toBe('2026-01-01'))
})

describe('a stop-problem', () => {
  it('of one slab leaves the other slabs planned', () => {
    const site = sampleSite('plain-rectangle')
    const good = site.slabs[0]!
    const [a, b, c, d] = good.outline.vertices
    const crossed = {
      ...good,
      id: 's901',
      outline: { ...good.outline, vertices: [a!, c!, b!, d!] },
    }
    const plan = planOf({ ...site, slabs: [crossed, good] })
    expect(plan.problems.some(p => p.severity === 'stop' && p.at?.entityId === 's901')).toBe(true)
    expect(plan.slabs[1]!.netAreaM2).toBeCloseTo(24 * 14 * 0.3048 ** 2, 9)
    expect(plan.pours).toHaveLength(1)
  })
})

describe('an accepted joint that ends on a corner', () => {
  it('follows the corner when it moves', () => {
    const site = sampleSite('l-patio-accepted')
    const slab = site.slabs[0]!
    const corners = new Map(slab.outline.vertices.map(({ id, at }) => [id, at]))
    const [row] = site.accepted
    const joint = row!.joints.find(({ ends }) => ends.some(({ anchor }) => anchor.on === 'vertex'))!
    const end = joint.ends.find(({ anchor }) => anchor.on === 'vertex')!
    const vertexId = end.anchor.on === 'vertex' ? end.anchor.vertexId : ''
    const [x, y] = corners.get(vertexId)!
    const moved: Site = {
      ...site,
      accepted: [{ ...row!, joints: row!.joints.map(j => ({ ...j, locked: false })) }],
      slabs: [
        {
          ...slab,
          outline: {
            ...slab.outline,
            vertices: slab.outline.vertices.map(v => (v.id === vertexId ? { ...v, at: [x, y + 0.3] as const } : v)),
          },
        },
      ],
    }
    const plan = planOf(moved)
    expect(plan.problems.filter(({ code }) => code === 'anchorLost')).toEqual([])
    const now = plan.joints.find(({ id }) => id === joint.id)!
    expect([now.from, now.to].some(([px, py]) => Math.hypot(px - x, py - y - 0.3) < 1e-6)).toBe(true)
  })
})
