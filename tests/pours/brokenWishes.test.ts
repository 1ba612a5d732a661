/** Wishes made after the pours were accepted: what does not keep them is told, and a repair splits the rest anew. */
import { describe, expect, it } from 'vitest'
import { invariants } from '../../core/document/invariants'
import { lockPour } from '../../core/pours/editing/changePour'
import { repairPours } from '../../core/pours/replan/repairPours'
import { replanRest } from '../../core/pours/replan/replanRest'
import type { JointWish } from '../../shared/document/pours'
import type { Site } from '../../shared/document/site'
import { acceptedSite, at, facesOf, ftM, plan } from '../jointEditing/acceptedSlab'

const codes = ['jointOnForbidden', 'requiredNotKept', 'pourUnderWidth']
const told = (site: Site) => plan(site).problems.filter(({ code }) => codes.includes(code))

/** 60 × 30 ft in two pours of 900 ft²: one joint across at 30 ft. */
const halves = acceptedSite(
  [
    [0, 0],
    [60, 0],
    [60, 30],
    [0, 30],
  ],
  [],
  1200,
)
const { slabId, part } = halves.accepted[0]!
const wished = (...wishes: JointWish[]): Site => ({ ...halves, nextId: 2000, wishes })

const end = (xFt: number, yFt: number) => ({ anchor: { on: 'free' as const }, last: at(xFt, yFt) })
const required = (xFt: number): JointWish => ({
  ...{ id: 'q901', slabId, kind: 'required' },
  line: [end(xFt, 0), end(xFt, 30)],
})
const area = (fromFt: number, toFt: number): JointWish => ({
  ...{ id: 'q902', slabId, kind: 'forbiddenArea' },
  path: {
    id: 'r903',
    vertices: [
      { id: 'v904', at: at(fromFt, 5) },
      { id: 'v905', at: at(toFt, 5) },
      { id: 'v906', at: at(toFt, 25) },
      { id: 'v907', at: at(fromFt, 25) },
    ],
    edges: [{ id: 'e908' }, { id: 'e909' }, { id: 'e910' }, { id: 'e911' }],
  },
})
const line = (xFt: number): JointWish => ({
  ...{ id: 'q912', slabId, kind: 'forbiddenLine' },
  line: [at(xFt, 10), at(xFt + 4, 20)],
})

const repairOf = (site: Site) => {
  const rest = replanRest(site, slabId, part, { budget: 'small' })
  const repair = repairPours(site, slabId, part, rest.ok ? rest.value.offer : null)
  if (!repair.ok) throw new Error(JSON.stringify(repair.error))
  return repair.value
}

describe('a wish made after the pours were accepted', () => {
  it('says nothing where the accepted joints keep it', () => {
    expect(told(wished(required(30), area(35, 50), line(40)))).toEqual([])
    expect(told({ ...halves, settings: { leastPourWidthM: 29 * ftM } })).toEqual([])
  })

  it('is told at the joint that lies where none may, at the line without a joint, at the pour that is too narrow', () => {
    const joint = halves.accepted[0]!.joints[0]!.id
    expect(told(wished(area(25, 35)))).toMatchObject([
      { code: 'jointOnForbidden', values: { kind: 'area', held: '' }, at: { entityId: joint } },
    ])
    expect(told(wished(line(28)))).toMatchObject([{ code: 'jointOnForbidden', values: { kind: 'line' } }])
    const [off] = told(wished(required(24)))
    expect(off).toMatchObject({ code: 'requiredNotKept', at: { entityId: 'q901' } })
    expect(Number(off!.values.lengthM)).toBeCloseTo(30 * ftM, 6)
    const narrow = told({ ...halves, settings: { leastPourWidthM: 31 * ftM } })
    expect(narrow.map(({ code }) => code)).toEqual(['pourUnderWidth', 'pourUnderWidth'])
    expect(narrow[0]!.message).toContain('30′ 0″ wide')
    for (const { hint } of [off!, ...narrow]) expect(hint).toMatch(/^Take the repair/)
  })

  it('is kept by the repair, which takes one step and leaves nothing to be told', () => {
    for (const wish of [area(25, 35), line(28), required(24)]) {
      const { site, deeds, findings } = repairOf(wished(wish))
      expect(deeds, wish.kind).toMatchObject([{ does: 'restSplit', wishes: 1, over: [], kept: [] }])
      expect(findings, wish.kind).toEqual([])
      expect(invariants(site)).toEqual([])
      expect(told(site), wish.kind).toEqual([])
      const { faces } = facesOf(site)
      expect(faces.reduce((sum, { areaM2 }) => sum + areaM2, 0)).toBeCloseTo(1800 * ftM * ftM, 9)
    }
  })

  it('behind a lock asks for the key, and no repair is offered; beside poured concrete it is over', () => {
    const site = wished(area(25, 35))
    const [first] = site.accepted[0]!.pours
    const locked = lockPour(site, first!.id, { shape: true })
    if (!locked.ok) throw new Error('not locked')
    const [held] = told(locked.value)
    expect(held).toMatchObject({ code: 'jointOnForbidden', values: { held: 'lock' } })
    expect(held!.hint).toMatch(/^Unlock/)
    const rest = replanRest(locked.value, slabId, part, { budget: 'small' })
    expect(repairPours(locked.value, slabId, part, rest.ok ? rest.value.offer : null)).toMatchObject({
      ok: false,
      error: [{ code: 'nothingToPlan' }],
    })
    const accepted = site.accepted.map(row => ({
      ...row,
      pours: row.pours.map(pour =>
        pour.id === first!.id
          ? {
              ...pour,
              poured: {
                outline: {
                  id: 'r950',
                  vertices: facesOf(site)
                    .faces.find(({ pourId }) => pourId === pour.id)!
                    .region.outer.map(({ from }, i) => ({ id: `v${951 + i}`, at: from })),
                  edges: [{ id: 'e961' }, { id: 'e962' }, { id: 'e963' }, { id: 'e964' }],
                },
                ...{ holes: [], areaM2: 900 * ftM * ftM, logId: 'l970' },
              },
            }
          : pour,
      ),
    }))
    expect(told({ ...site, accepted })).toEqual([])
  })

  it('that no split can keep is told and not offered as a repair without end', () => {
    const wide = { ...halves, settings: { leastPourWidthM: 31 * ftM } }
    const rest = replanRest(wide, slabId, part, { budget: 'small' })
    expect(repairPours(wide, slabId, part, rest.ok ? rest.value.offer : null).ok).toBe(false)
  })
})
