import { describe, expect, it } from 'vitest'
import { curveArea } from '../../core/geometry/ringArea'
import { createMemo } from '../../core/plan/memo'
import type { Plan } from '../../core/plan/plan'
import { asBuiltFaces } from '../../core/pours/asBuiltFaces'
import { pourFaces } from '../../core/pours/pourFaces'
import { livePours } from '../../renderer/pours/livePours'
import { deriveLive } from '../../renderer/store/livePlan'
import type { AcceptedPours, Joint } from '../../shared/document/pours'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { at, bareSite, ftM, plan } from '../jointEditing/acceptedSlab'

const ft2M2 = ftM * ftM

const joint = (xFt: number, to = 30): Joint => ({
  id: 'j901',
  ends: [
    { anchor: { on: 'free' }, last: at(xFt, 0) },
    { anchor: { on: 'free' }, last: at(xFt, to) },
  ],
  locked: false,
  kind: 'construction',
})

const outline = (corners: readonly Pt[]) => ({
  id: 'r900',
  vertices: corners.map((own, i) => ({ id: `v90${i}`, at: own })),
  edges: corners.map((_, i) => ({ id: `e90${i}` })),
})

/** 60 × 30 ft in two halves, the left one in the ground. */
function halfPoured(): Site {
  const site = bareSite([
    [0, 0],
    [60, 0],
    [60, 30],
    [0, 30],
  ])
  const lock = { shape: false, time: false }
  const poured = {
    outline: outline([at(0, 0), at(30, 0), at(30, 30), at(0, 30)]),
    holes: [],
    areaM2: 900 * ft2M2,
    logId: 'l900',
  }
  return {
    ...site,
    nextId: 1000,
    log: [{ id: 'l900', pourId: 'n901', date: '2026-07-20', loads: [], strips: [], used: [], notes: '' }],
    accepted: [
      {
        slabId: site.slabs[0]!.id,
        part: 'whole',
        joints: [joint(30)],
        pours: [
          { id: 'n901', number: '1', seed: at(15, 15), lock, poured },
          { id: 'n902', number: '2', seed: at(45, 15), lock },
        ],
      },
    ],
  }
}

const withCorners = (site: Site, move: (x: number, y: number) => readonly [number, number]): Site => ({
  ...site,
  slabs: site.slabs.map(slab => ({
    ...slab,
    outline: {
      ...slab.outline,
      vertices: slab.outline.vertices.map(v => {
        const [x, y] = move(Math.round(v.at[0] / ftM), Math.round(v.at[1] / ftM))
        return { ...v, at: at(x, y) }
      }),
    },
  })),
})

const withJoint = (site: Site, xFt: number): Site => ({
  ...site,
  accepted: site.accepted.map(part => ({ ...part, joints: [joint(xFt)] })),
})

const ft2 = (areaM2: number) => areaM2 / ft2M2
const pourOf = ({ pours }: Plan, id: string) => pours.find(pour => pour.id === id)!
const together = ({ pours }: Plan) => pours.reduce((sum, { areaM2 }) => sum + areaM2, 0)
const differs = ({ problems }: Plan) => problems.filter(({ code }) => code === 'differsFromAsBuilt')

/** The corners of a region in feet, in no order. */
const cornersOf = (own: Plan['pours'][number]) =>
  own.region.outer.map(({ from }) => from.map(v => Math.round(v / ftM)).join()).toSorted()

describe('a poured pour', () => {
  it('stays where it was poured when its joint moves, and the rest tiles the slab', () => {
    const moved = plan(withJoint(halfPoured(), 36))
    expect(pourOf(moved, 'n901').areaM2).toBe(900 * ft2M2)
    expect(cornersOf(pourOf(moved, 'n901'))).toEqual(['0,0', '0,30', '30,0', '30,30'])
    expect(ft2(pourOf(moved, 'n902').areaM2)).toBeCloseTo(24 * 30, 6)
    // What the joint left between concrete and joint is proposed as pours of its own.
    expect(ft2(together(moved))).toBeCloseTo(1800, 6)
    expect(differs(moved)).toHaveLength(1)
    const against = moved.joints.filter(({ pourIds }) => pourIds.includes('n901'))
    expect(against.map(({ lengthM }) => lengthM / ftM)).toEqual([expect.closeTo(30, 6)])
    for (const { from, to } of against) for (const end of [from, to]) expect(end[0] / ftM).toBeCloseTo(30, 6)
  })

  it('is not cut by a joint moved into it', () => {
    const moved = plan(withJoint(halfPoured(), 20))
    expect(pourOf(moved, 'n901').areaM2).toBe(900 * ft2M2)
    expect(ft2(pourOf(moved, 'n902').areaM2)).toBeCloseTo(900, 6)
    expect(moved.pours).toHaveLength(2)
    const [row, ...others] = moved.joints.filter(({ kind }) => kind === 'construction')
    expect(others).toEqual([])
    expect(row).toMatchObject({ id: 'j901', pourIds: ['n901', 'n902'] })
    expect(row!.from[0] / ftM).toBeCloseTo(30, 6)
  })

  it('keeps its area when the slab is drawn smaller or larger under it', () => {
    const smaller = plan(withCorners(halfPoured(), (x, y) => [x === 0 ? 3 : x, y]))
    expect(pourOf(smaller, 'n901').areaM2).toBe(900 * ft2M2)
    expect(ft2(pourOf(smaller, 'n902').areaM2)).toBeCloseTo(900, 6)
    expect(differs(smaller)[0]!.values.byM2).toBeCloseTo(90 * ft2M2, 6)
    const larger = plan(withCorners(halfPoured(), (x, y) => [x === 0 ? -10 : x, y]))
    expect(pourOf(larger, 'n901').areaM2).toBe(900 * ft2M2)
    expect(ft2(together(larger))).toBeCloseTo(2100, 6)
    expect(larger.pours.some(({ proposed }) => proposed)).toBe(true)
  })

  it('stays on the page too while the plan is the same as the document on screen', () => {
    const site = withJoint(halfPoured(), 36)
    const own = plan(site)
    const shown = livePours(deriveLive(site, '2026-07-21', createMemo()), own.pours, own.joints)
    expect(shown.pours).toEqual(own.pours)
    const construction = shown.joints.filter(({ kind }) => kind === 'construction')
    expect(construction).toHaveLength(own.joints.filter(({ kind }) => kind === 'construction').length)
    expect(construction.find(({ pourIds }) => pourIds.length === 1 && pourIds[0] === 'n901')?.locked).toBe(true)
  })

  it('is told as moved where the area alone would not show it', () => {
    const site = withJoint(
      withCorners(halfPoured(), (x, y) => [x + 5, y]),
      35,
    )
    const shifted = plan(site)
    expect(cornersOf(pourOf(shifted, 'n901'))).toEqual(['0,0', '0,30', '30,0', '30,30'])
    expect(differs(shifted)[0]!.values.byM2).toBeCloseTo(150 * ft2M2, 6)
  })

  it('is still there when the slab is drawn elsewhere', () => {
    const away = plan(withCorners(halfPoured(), (x, y) => [x + 200, y]))
    expect(pourOf(away, 'n901').areaM2).toBe(900 * ft2M2)
    expect(differs(away)).toHaveLength(1)
    expect(away.problems.some(({ code, at: own }) => code === 'pourLost' && own?.entityId === 'n901')).toBe(false)
  })

  it('that is drawn as it was built leaves the faces as the joints cut them', () => {
    const site = halfPoured()
    const part: AcceptedPours = site.accepted[0]!
    const built = plan(site)
    expect(differs(built)).toEqual([])
    const free = plan({ ...site, log: [], accepted: [{ ...part, pours: part.pours.map(({ poured: _, ...p }) => p) }] })
    const shapes = (own: Plan) =>
      own.pours.map(({ id, region, areaM2 }) => ({ id, region, areaM2 })).toSorted((a, b) => (a.id < b.id ? -1 : 1))
    expect(shapes(built)).toEqual(shapes(free))
    const cuts = built.slabs[0]!.net.map(region => pourFaces(region, part))
    expect(asBuiltFaces(cuts, part)).toBe(cuts)
    expect(curveArea(cuts[0]!.faces.map(({ region }) => region))).toBeCloseTo(1800 * ft2M2, 6)
  })
})
