import { describe, expect, it } from 'vitest'
import { addMaterial, changeMaterial, setOnHand } from '../../core/document/commands/setMaterials'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import { checkRetarder, delayInDrum, packagesFor, siteRetarder } from '../../core/pours/day/retarder'
import { nextSteps } from '../../core/pours/slab/nextSteps'
import { daySheet } from '../../core/reports/day/daySheet'
import type { Site } from '../../shared/document/site'
import { chain, refusal } from '../commands/edit'
import { planOf, sampleSite } from '../plan/sampleSite'

const yd3 = 0.764554857984
/** 8 oz in a cubic yard put off 20 min, 24 oz at most; bags of 12 oz. */
const label = { leastPerM3: 8 / yd3, mostPerM3: 24 / yd3, leastBuysMin: 20 }
const bags = { name: 'Slow-set bags', kind: 'retarder', unit: 'oz', packageSize: 12, label } as const

const bare = (): Site => {
  const { materials: _, stock: __, ...site } = sampleSite('l-patio-accepted')
  return site as Site
}
const idOf = (site: Site): string => site.materials!.find(({ kind }) => kind === 'retarder')!.id

describe('packages without a product', () => {
  it('are one for 30 min in 1 yd³ by the setting, and never none', () => {
    expect(siteRetarder(bare())).toBeUndefined()
    expect(packagesFor(30, yd3)).toBe(1)
    expect(packagesFor(30, 3 * yd3)).toBe(3)
    expect(packagesFor(30, 2.4 * yd3)).toBe(2)
    expect(packagesFor(5, 0.2 * yd3)).toBe(1)
    expect(packagesFor(30, 3 * yd3, { settings: { retarderPackageM3Min: 3 * 30 * yd3 } })).toBe(1)
  })

  it('make what they make, an hour at most', () => {
    expect(delayInDrum(0, 2, 2.4 * yd3)).toBeCloseTo(25, 4)
    expect(delayInDrum(30, 2, 2.4 * yd3)).toBeCloseTo(55, 4)
    expect(delayInDrum(0, 9, yd3)).toBe(60)
    expect(delayInDrum(0, 1, 0)).toBe(0)
  })
})

describe('packages of a product', () => {
  const site = chain(bare(), addMaterial(bags))
  const retarder = siteRetarder(site)!

  it('are counted by its label: 12 oz where 8 oz put 1 yd³ off by 20 min', () => {
    // 30 min in 2 yd³ take 8 · 30/20 · 2 = 24 oz.
    expect(packagesFor(30, 2 * yd3, { retarder })).toBe(2)
    expect(packagesFor(60, 2 * yd3, { retarder })).toBe(4)
    expect(delayInDrum(0, 1, 1.5 * yd3, { retarder })).toBeCloseTo(20, 9)
    expect(retarder.label).toEqual({ leastMin: 20, mostMin: expect.closeTo(60, 9) })
    expect(retarder.onHand).toBeUndefined()
  })

  it('by the setting until the label is entered', () => {
    const unlabeled = siteRetarder(chain(site, changeMaterial(idOf(site), { label: undefined })))!
    expect(unlabeled.label).toBeUndefined()
    expect(packagesFor(30, 2 * yd3, { retarder: unlabeled })).toBe(2)
    expect(packagesFor(30, 3 * yd3, { retarder: unlabeled })).toBe(3)
  })

  it('on hand are whole ones, and stay as many when their size is typed over', () => {
    const stocked = chain(site, setOnHand(idOf(site), 30))
    expect(siteRetarder(stocked)!.onHand).toBe(2)
    const full = chain(site, setOnHand(idOf(site), 36))
    expect(siteRetarder(chain(full, changeMaterial(idOf(full), { packageSize: 16 })))!.onHand).toBe(3)
    expect(chain(full, setOnHand(idOf(full), undefined)).stock).toBeUndefined()
    expect(readSite(serializeSite(full))).toEqual({ ok: true, value: full })
    expect(refusal(changeMaterial('m9999', { name: 'x' })(site))).toBe('entityMissing')
    expect(refusal(setOnHand('m9999', 1)(site))).toBe('entityMissing')
  })

  it('of two products are those of the one in stock', () => {
    const two = chain(site, addMaterial({ ...bags, name: 'Other' }))
    const other = two.materials!.at(-1)!.id
    expect(siteRetarder(two)!.name).toBe('Slow-set bags')
    expect(siteRetarder(chain(two, setOnHand(other, 12)))!.name).toBe('Other')
  })

  it('tell a dose off the label, and more than there is', () => {
    const doses = [{ doseMin: 30, inDrumMin: 0, leftM3: 2 * yd3 }]
    const codes = (of: Parameters<typeof checkRetarder>[2]) => checkRetarder('1', doses, of).map(({ code }) => code)
    expect(codes({})).toEqual([])
    expect(codes({ retarder })).toEqual([])
    expect(codes({ retarder: { ...retarder, label: { leastMin: 40, mostMin: 90 } } })).toEqual(['retarderOffLabel'])
    expect(codes({ retarder: { ...retarder, label: { leastMin: 10, mostMin: 20 } } })).toEqual(['retarderOffLabel'])
    expect(codes({ retarder: { ...retarder, onHand: 1 } })).toEqual(['retarderShort'])
    expect(codes({ retarder: { ...retarder, onHand: 2 } })).toEqual([])
  })
})

describe('the court whose pours were logged', () => {
  const site = sampleSite('logged-court')
  const plan = planOf(site, { date: '2026-07-22' })
  const day = plan.dayPlans.find(({ number }) => number === '4')!
  const words = daySheet(plan, day.pourId)
    .sections.map(({ content: [node] }) => (typeof node === 'object' && 'svg' in node ? node.svg : ''))
    .join(' ')
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')

  it('counts the bags of its retarder the same on the day sheet and at the slab', () => {
    const [mark] = day.doseMarks
    // 8 oz/yd³ buy 20 min: ounces over bags of 12 oz.
    const wanted = Math.round((8 * ((mark!.doseMin / 20) * (mark!.leftM3 / yd3))) / 12)
    expect(words).toContain(`${wanted} ${wanted === 1 ? 'package' : 'packages'}, mix`)
    expect(words).toMatch(new RegExp(`Slow-set bags: ${wanted} packages? of 12 oz, 9 on hand`))
    const before = day.plan.strips.findIndex(({ id }) => id === mark!.beforeStripId)
    const strips = day.plan.strips.map((strip, i) => ({
      ...strip,
      state: i < before ? ('placed' as const) : ('toPlace' as const),
    }))
    const placed = strips.slice(0, before).map(({ placedMs }) => ({ placedMs }))
    const steps = nextSteps(
      day.input,
      {
        ...{ loads: [{ lateMin: 0, packages: 0 }], front: null, handsMissing: 0, rainMs: null, doneMs: null },
        strips: day.plan.strips.map((_, i) => placed[i] ?? {}),
      },
      {
        ...{ strips, slackMin: 0, firstLostStripId: null, tightestStripId: null, dosesChanged: false },
        loads: [{ no: 1, state: 'onSite', batchMs: 0, onSiteMs: 0, volumeM3: 1, leftM3: 1, packages: 0 }],
        ...{ setFactor: 1, hands: 5, pace: { factor: 1, strips: 0, isLimited: false } },
      },
    )
    expect(steps.find(({ what }) => what === 'dosed')).toMatchObject({ packages: wanted })
  })

  it('plans the pour to come with what three logs taught, and is silent on those that are poured', () => {
    expect(day.input.learned!.lnFactor).toBeLessThan(-0.02)
    expect(day.input.learned!.spreadLn).toBeLessThan(0.15)
    const pouredIds = site.accepted[0]!.pours.filter(({ poured }) => poured).map(({ id }) => id)
    expect(pouredIds).toHaveLength(3)
    expect(plan.problems.filter(({ at }) => pouredIds.includes(at?.entityId ?? ''))).toEqual([])
  })

  it('says that no stock is entered where none is', () => {
    const none = planOf(bare())
    const text = daySheet(none, none.dayPlans[0]!.pourId)
      .sections.map(({ content: [node] }) => (typeof node === 'object' && 'svg' in node ? node.svg : ''))
      .join(' ')
    expect(text).toContain('No stock entered.')
    expect(text).toContain('no product entered')
  })
})
