import { describe, expect, it } from 'vitest'
import { derivePlan } from '../../core/plan/derivePlan'
import type { PricingGround } from '../../core/pours/alternatives/priceAlternative'
import { proposeAlternatives } from '../../core/pours/alternatives/proposeAlternatives'
import { acceptPours } from '../../core/pours/editing/acceptPours'
import type { Proposal, SplitInput } from '../../core/pours/proposal'
import { proposePours } from '../../core/pours/proposePours'
import { replanRest } from '../../core/pours/replan/replanRest'
import { weightTable } from '../../core/pours/weights'
import { bandOnJoint } from '../../core/pours/wishes/bandOnJoint'
import { findMiters } from '../../core/pours/wishes/findMiters'
import type { JointWishes } from '../../core/pours/wishes/jointWishes'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { acceptedSite, at, bareSite, facesOf, ftM } from '../jointEditing/acceptedSlab'
import { checkProposal } from './checkProposal'
import { checkWishes } from './checkWishes'
import { ft2M2, planter, rectangle, region } from './shapes'

const slab = region(rectangle(0, 0, 60, 40))
const pool = region(rectangle(0, 0, 60, 40), planter(22, 14, 16, 12))

const propose = (wishes: JointWishes, more: Partial<SplitInput> = {}): Proposal =>
  proposePours({ slabId: 's1', part: 'whole', region: slab, capM2: 800 * ft2M2, wishes, ...more })

const required = (id: string, from: Pt, to: Pt) => ({ id, from, to })
const across = required('y1', at(25, -2), at(25, 42))
const codes = ({ findings }: Proposal): string[] => findings.map(({ code }) => code)
const term = ({ cost }: Proposal, name: string): number => cost.find(c => c.term === name)!.value
const feet = ([x, y]: Pt): Pt => [Math.round((x / ftM) * 1e6) / 1e6, Math.round((y / ftM) * 1e6) / 1e6]
const told = ({ findings }: Proposal, code: string): string => {
  const finding = findings.find(each => each.code === code)!
  const { message, hint } = wordProblem(finding, printMeasures('ftin'))
  return hint === undefined ? message : `${message} ${hint}`
}

describe('a required joint', () => {
  it('lies exactly where it was drawn, trimmed to the slab, and the rest is searched around it', () => {
    const proposal = propose({ required: [across] })
    const own = proposal.joints.filter(({ wishId }) => wishId === 'y1')
    expect(own.map(({ from, to }) => [feet(from), feet(to)])).toEqual([
      [
        [25, 0],
        [25, 40],
      ],
    ])
    checkProposal(slab, 800 * ft2M2, { ...proposal, findings: [] }, 'one line')
    expect(proposal.pours.map(({ areaM2 }) => Math.round(areaM2 / ft2M2)).sort()).toEqual([500, 500, 700, 700])
    // The joints on both sides of it meet it in line.
    const ends = proposal.joints.filter(({ wishId }) => wishId === undefined).map(({ from }) => feet(from)[1])
    expect(new Set(ends).size).toBe(1)
  })

  it('may stop at another one, and runs on through an opening', () => {
    const tee = propose({ required: [across, required('y2', at(25, 15), at(60, 15))] })
    expect(tee.joints.filter(({ wishId }) => wishId === 'y2').map(({ from, to }) => [feet(from), feet(to)])).toEqual([
      [
        [25, 15],
        [60, 15],
      ],
    ])
    const through = propose({ required: [required('y1', at(30, 0), at(30, 40))] }, { region: pool })
    expect(
      through.joints.filter(({ wishId }) => wishId === 'y1').map(({ from, to }) => [feet(from), feet(to)]),
    ).toEqual([
      [
        [30, 0],
        [30, 14],
      ],
      [
        [30, 26],
        [30, 40],
      ],
    ])
  })

  it('that ends at an opening divides in the end: no pour has it on both sides', () => {
    const proposal = propose({ required: [required('y1', at(30, 0), at(30, 14))] }, { region: pool })
    const own = proposal.joints.find(({ wishId }) => wishId === 'y1')!
    expect(own.pours.length).toBe(2)
    checkProposal(pool, 800 * ft2M2, { ...proposal, findings: [] }, 'into the opening')
  })

  it('is carried on to the next edge where it stops inside, with a note', () => {
    const proposal = propose({ required: [required('y1', at(25, 10), at(25, 20))] })
    expect(proposal.joints.filter(({ wishId }) => wishId === 'y1').map(({ lengthM }) => lengthM / ftM)).toEqual([
      expect.closeTo(40, 9),
    ])
    expect(told(proposal, 'requiredCarriedOn')).toBe(
      'A required joint stops inside the slab; it was carried on to the next edge or required joint. Draw it to where it should end.',
    )
  })

  it('that misses the slab, or runs along its edge, is told', () => {
    for (const line of [required('y1', at(25, 50), at(45, 52)), required('y1', at(0, 0), at(60, 0))]) {
      const proposal = propose({ required: [line] })
      expect(proposal.pours.length).toBe(3)
      expect(proposal.findings[0]).toMatchObject({ severity: 'check', at: { entityId: 'y1' } })
      expect(told(proposal, 'requiredMisses')).toBe(
        'A required joint does not cross the slab: it divides nothing. Draw it from edge to edge across the slab, or delete it.',
      )
    }
  })

  it('that crosses another is kept, with the place and what to change', () => {
    const proposal = propose({ required: [across, required('y2', at(-3, 15), at(63, 15))] })
    checkProposal(slab, 800 * ft2M2, { ...proposal, findings: [] }, 'crossing')
    const finding = proposal.findings.find(({ code }) => code === 'requiredCross')!
    expect(feet(finding.at!.point!)).toEqual([25, 15])
    expect(told(proposal, 'requiredCross')).toBe(
      'Two required joints cross here, so that four pours meet at one point. Let one of them stop at the other, or move its far half to one side.',
    )
  })

  it('that stops at another short of every edge divides nothing, and is told', () => {
    const open = propose({ required: [required('y1', at(0, 20), at(30, 20)), required('y2', at(20, 20), at(30, 20))] })
    expect(codes(open)).toContain('requiredOpen')
    expect(told(open, 'requiredOpen')).toBe(
      'A required joint ends inside a pour and divides nothing there. Draw its end to an edge or to another required joint.',
    )
    checkProposal(slab, 800 * ft2M2, { ...open, findings: [] }, 'open')
    expect(open.joints.every(({ wishId }) => wishId === undefined)).toBe(true)
  })

  it('twice in one place counts once', () => {
    const twice = propose({ required: [across, required('y2', at(25, 5), at(25, 35))] })
    expect(twice.joints.filter(({ wishId }) => wishId !== undefined).length).toBe(1)
    expect(twice.totalCost).toBe(propose({ required: [across] }).totalCost)
  })

  it('that cuts off a strip no mat fits stays, and is told with the width there should be', () => {
    const proposal = propose({ required: [required('y1', at(1, -1), at(1, 41))] })
    expect(proposal.joints.some(({ wishId }) => wishId === 'y1')).toBe(true)
    expect(told(proposal, 'requiredSmall')).toBe(
      'Required joints cut off a piece of 40 ft², 1′ 0″ wide: too narrow for a mat and a finisher. Move the joint so that the piece is at least 4′ 0″ wide.',
    )
  })

  it('names the pours that it takes beyond those the area needs', () => {
    const proposal = propose({ required: [across] })
    expect(told(proposal, 'wishesAddPours')).toBe(
      'What you asked of the joints takes 4 pours; by its area this part needs 3 pours. Move a required joint or a line or area without joints to save a pour.',
    )
    expect(term(proposal, 'extraPour')).toBe(weightTable.extraPour.value)
  })

  it('wins over ground without joints, and the two are told', () => {
    const wishes = { required: [across], forbiddenAreas: [{ id: 'a1', ring: rectangle(20, 10, 10, 10) }] }
    const proposal = propose(wishes)
    checkWishes(slab, wishes, proposal, 'conflict')
    const finding = proposal.findings.find(({ code }) => code === 'requiredForbidden')!
    expect(finding).toMatchObject({ values: { wishId: 'a1' }, at: { entityId: 'y1' } })
    expect(told(proposal, 'requiredForbidden')).toBe(
      'A required joint runs where no joint may lie. It was kept. Move the joint, or take away the line or area without joints.',
    )
  })
})

describe('ground without joints', () => {
  it('is kept clear: a line is not crossed, an area may be passed along its edge', () => {
    const line = { forbiddenLines: [{ id: 'l1', line: [at(0, 20), at(60, 20)] }] }
    const lanes = propose(line)
    checkWishes(slab, line, lanes, 'line')
    expect(lanes.joints.every(({ from, to }) => Math.abs(from[1] - to[1]) < 1e-9)).toBe(true)
    const area = { forbiddenAreas: [{ id: 'a1', ring: rectangle(10, 5, 35, 30) }] }
    const around = propose(area, { capM2: 1300 * ft2M2 })
    checkWishes(slab, area, around, 'area')
    checkProposal(slab, 1300 * ft2M2, { ...around, findings: [] }, 'area')
  })

  it('that leaves no way is named, with what to change', () => {
    for (const [wishes, kept] of [
      [{ forbiddenAreas: [{ id: 'a1', ring: rectangle(-1, -1, 62, 42) }] }, '2,400 ft²'],
      [{ forbiddenAreas: [{ id: 'a1', ring: rectangle(15, -1, 30, 42) }] }, '1,200 ft²'],
    ] as const) {
      const proposal = propose(wishes)
      expect(proposal.pours.length).toBe(1)
      expect(proposal.findings[0]).toMatchObject({ severity: 'stop', at: { entityId: 'a1' } })
      expect(told(proposal, 'noJointAllowed')).toBe(
        `Ground without joints keeps ${kept} in one pour; the crew can stamp at most 800 ft² at one time. Make the line or area without joints marked here smaller or take it away, or raise the area the crew can stamp at one time.`,
      )
    }
    const both = propose({
      forbiddenAreas: [
        { id: 'a1', ring: rectangle(-1, -1, 62, 42) },
        { id: 'a2', ring: rectangle(-2, -2, 64, 44) },
      ],
    })
    expect(both.findings[0]!.at!.entityId).toBe('s1')
    expect(told(both, 'noJointAllowed')).toContain('Make the lines and areas without joints smaller or take some away')
  })

  it('that only may leave no way says what was tried, not more', () => {
    // Two areas of 760 ft² side by side: a joint fits between them, and none where they overlap.
    const between = {
      forbiddenAreas: [
        { id: 'a1', ring: rectangle(0, -1, 19, 42) },
        { id: 'a2', ring: rectangle(19, -1, 19, 42) },
      ],
    }
    const along = propose(between)
    expect(codes(along)).toEqual(['wishesAddPours'])
    expect(along.joints.some(({ from, to }) => [from, to].every(([x]) => Math.abs(x - 19 * ftM) < 2e-3))).toBe(true)
    const overlapping = propose({
      forbiddenAreas: [
        { id: 'a1', ring: rectangle(0, -1, 19.1, 42) },
        { id: 'a2', ring: rectangle(19, -1, 19, 42) },
      ],
    })
    expect(overlapping.findings[0]!.values).toMatchObject({ wishId: 'a1' })
    expect(told(overlapping, 'noJointAllowed')).toContain('keeps 1,520 ft² in one pour')
    const lines = propose({
      forbiddenLines: Array.from({ length: 9 }, (_, i) => ({
        id: `l${i}`,
        line: [at(6 + 6 * i, -1), at(0, 12 + 6 * i)],
      })),
      forbiddenAreas: [{ id: 'a1', ring: rectangle(-1, 10, 62, 31) }],
    })
    expect(lines.findings.map(({ code }) => code)).toContain('noJointAllowed')
  })

  it('stops only the face it fills: the other side of a required joint is split', () => {
    const proposal = propose({
      required: [required('y1', at(30, 0), at(30, 40))],
      forbiddenAreas: [{ id: 'a1', ring: rectangle(29, -1, 32, 42) }],
    })
    expect(codes(proposal)).toContain('noJointAllowed')
    expect(proposal.pours.map(({ areaM2 }) => Math.round(areaM2 / ft2M2)).sort()).toEqual([1200, 600, 600])
    expect(proposal.proven).toBe(false)
  })
})

describe('what else is wished of the joints', () => {
  it('a least width holds for every pour where it can', () => {
    const narrow = propose({}, { region: region(rectangle(0, 0, 90, 20)), capM2: 600 * ft2M2, pourCount: 5 })
    const wide = propose(
      { leastWidthM: 19 * ftM },
      { region: region(rectangle(0, 0, 90, 20)), capM2: 600 * ft2M2, pourCount: 4 },
    )
    expect(narrow.pours.length).toBe(5)
    expect(codes(wide)).toEqual([])
    for (const { areaM2 } of wide.pours) expect(areaM2 / ft2M2 / 20).toBeGreaterThan(19 - 1e-6)
  })

  it('a least width that no split has is told with the narrowest there is', () => {
    const proposal = propose({ leastWidthM: 30 * ftM })
    expect(proposal.pours.length).toBe(3)
    expect(told(proposal, 'narrowerThanWished')).toBe(
      'No split was found that keeps every pour at least 30′ 0″ wide; the narrowest is 20′ 0″. Ask for a smaller least width, move required joints, or raise the area the crew can stamp at one time.',
    )
  })

  it('a capacity under the smallest workable pour stops before anything is cut', () => {
    const proposal = propose({ required: [across] }, { capM2: 10 * ft2M2 })
    expect(told(proposal, 'capacityTooSmall')).toBe(
      'The largest area to stamp at one time, 10 ft², is too small for this slab: a pour needs at least 16 ft² here. Raise the area the crew can stamp at one time.',
    )
  })

  it('joints follow a wished direction where that costs less than its weight', () => {
    const plain = propose({ directionsDeg: [30] }, { weights: { offDirection: 0 } })
    const followed = propose({ directionsDeg: [30] }, { weights: { offDirection: 20 } })
    const off = ({ joints }: Proposal) =>
      joints.filter(({ from, to }) => {
        const deg = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
        return Math.abs(((((deg - 30) % 90) + 135) % 90) - 45) > 0.5
      }).length
    expect(off(plain)).toBeGreaterThan(0)
    expect(off(followed)).toBe(0)
    expect(term(followed, 'offDirection')).toBe(0)
  })

  it('a joint moves under a band or along a straight course, and saves what it costs to see', () => {
    const half = { region: region(rectangle(0, 0, 40, 20)), capM2: 600 * ft2M2 }
    const free = propose({}, half)
    const hidden = propose({ hiding: [{ from: at(22, 0), to: at(22, 20), widthM: 0.3 }] }, half)
    expect(free.joints.map(({ from }) => feet(from)[0])).toEqual([20])
    expect(Math.abs(feet(hidden.joints[0]!.from)[0] - 22)).toBeLessThanOrEqual(0.165 / ftM)
    expect(term(hidden, 'hidden')).toBeCloseTo(-0.5 * 20, 6)
    expect(term(propose({ courses: [{ deg: 90 }] }, half), 'hidden')).toBeCloseTo(-0.5 * 20, 6)
    // Courses of 6 in from a start 2 in off: the joint moves the 2 in.
    const laid = propose({ courses: [{ deg: 90, lines: { at: at(2 / 12, 0), stepM: 0.1524 } }] }, half)
    expect(term(laid, 'hidden')).toBeCloseTo(-0.5 * 20, 6)
    const steps = (feet(laid.joints[0]!.from)[0] - 2 / 12) / 0.5
    expect(Math.abs(steps - Math.round(steps)) * 0.1524).toBeLessThan(0.015)
    // Never at the price of another pour.
    expect(propose({ hiding: [{ from: at(18, 0), to: at(18, 40), widthM: 0.3 }] }).pours.length).toBe(3)
  })

  it('a joint keeps off a miter', () => {
    const half = { region: region(rectangle(0, 0, 40, 20)), capM2: 600 * ft2M2 }
    const away = propose({ miters: [{ from: at(20, 0), to: at(20, 3) }] }, { ...half, weights: { nearMiter: 60 } })
    expect(feet(propose({}, half).joints[0]!.from)[0]).toBe(20)
    expect(Math.abs(feet(away.joints[0]!.from)[0] - 20)).toBeGreaterThanOrEqual(1)
    expect(term(away, 'nearMiter')).toBeLessThan(30)
  })

  it('no wish leaves every term and every joint as it was', () => {
    const { cost: _, ...bare } = proposePours({ slabId: 's1', part: 'whole', region: pool, capM2: 800 * ft2M2 })
    const { cost, ...empty } = propose(
      { required: [], forbiddenLines: [], forbiddenAreas: [], directionsDeg: [], miters: [], hiding: [] },
      { region: pool },
    )
    expect(empty).toEqual(bare)
    for (const name of ['nearMiter', 'offDirection', 'hidden'])
      expect(cost.find(c => c.term === name)!.value, name).toBe(0)
  })

  it('a border has its miters at the corners it runs around: w ÷ sin(θ/2) along the bisector', () => {
    const ring = rectangle(0, 0, 60, 40)
    const border = {
      id: 'b1',
      pathId: 'r1',
      edges: 'all' as const,
      widthM: ftM,
      finishId: 'f1',
      placed: 'withField' as const,
    }
    const miters = findMiters(ring, [border, border])
    expect(miters.map(({ from, to }) => [feet(from), feet(to)])).toEqual([
      [
        [60, 0],
        [58, 2],
      ],
      [
        [60, 40],
        [58, 38],
      ],
      [
        [0, 40],
        [2, 38],
      ],
      [
        [0, 0],
        [2, 2],
      ],
    ])
    const first = ring[0]!.edgeId
    expect(findMiters(ring, [{ ...border, edges: [first] }])).toEqual([])
  })
})

const bigRect = [
  [0, 0],
  [60, 0],
  [60, 40],
  [0, 40],
] as const

const withWish = (site: Site, line: readonly [Pt, Pt]): Site => ({
  ...site,
  nextId: site.nextId + 1,
  wishes: [
    {
      id: `y${site.nextId}`,
      slabId: site.slabs[0]!.id,
      kind: 'required',
      line: [
        { anchor: { on: 'free' }, last: line[0] },
        { anchor: { on: 'free' }, last: line[1] },
      ],
    },
  ],
})

const planOf = (site: Site) => {
  const plan = derivePlan(site, { date: '2026-07-21' })
  if (!plan.ok) throw new Error(JSON.stringify(plan.error))
  return plan.value
}

describe('the ways to split', () => {
  const ground: PricingGround = {
    ...{ slabId: 's1', part: 'whole', thicknessM: 0.1, pumped: false, units: 'ftin', settings: undefined },
    site: { slabs: [], casters: [], noGo: [], ways: [], truckSpots: [], capM2: 800 * ft2M2, startDate: '2026-07-20' },
  }

  it('all keep to what was required, lanes too', () => {
    const court = region(rectangle(0, 0, 120, 100))
    const input = { slabId: 's1', part: 'whole', region: court, capM2: 800 * ft2M2, budget: 'small' } as const
    const wishes: JointWishes = { required: [required('y1', at(50, 0), at(50, 100))] }
    const all = proposeAlternatives({ ...input, wishes }, ground)
    for (const { proposal } of all) checkWishes(court, wishes, proposal, 'court')
    expect(all.map(({ kind }) => kind)).toContain('lanes')
  })
})

describe('a plan of the site', () => {
  it('follows the required joints of the document and tells once what misses', () => {
    const site = withWish(bareSite(bigRect), [at(25, 0), at(25, 40)])
    const plan = planOf(site)
    expect(plan.joints.some(({ from, to }) => feet(from)[0] === 25 && feet(to)[0] === 25)).toBe(true)
    const missing = planOf(withWish(bareSite(bigRect), [at(25, 50), at(25, 90)]))
    expect(missing.problems.filter(({ code }) => code === 'requiredMisses').length).toBe(1)
  })

  it('splits a slab that an opening cuts in two piece by piece, and says so', () => {
    const strip = [
      [0, 0],
      [120, 0],
      [120, 20],
      [0, 20],
    ] as const
    const site = bareSite(strip, [[50, 0, 20]], 600)
    const plan = planOf(site)
    const found = plan.problems.find(({ code }) => code === 'slabInPieces')!
    expect(found).toMatchObject({ severity: 'note', at: { entityId: site.slabs[0]!.id } })
    expect(found.message).toBe('This slab is in 2 pieces; each is split on its own, and no joint runs between them.')
    expect(plan.pours.length).toBe(4)
    expect(planOf(bareSite(strip, [[50, 2, 16]], 600)).problems.some(({ code }) => code === 'slabInPieces')).toBe(false)
  })

  it('puts a band on a joint, and keeps the joint under it after a new plan', () => {
    const site = bareSite(bigRect)
    const joint = planOf(site).joints.find(({ kind }) => kind === 'construction')!
    const done = bandOnJoint({
      slabId: site.slabs[0]!.id,
      from: joint.from,
      to: joint.to,
      widthM: ftM,
      finishId: site.slabs[0]!.finishId,
    })(site)
    if (!done.ok) throw new Error(JSON.stringify(done.error))
    const { value: banded, made } = done
    expect(made.length).toBe(2)
    expect(banded.slabs[0]!.bands.length).toBe(1)
    const smaller = { ...banded, capacity: { capM2: 500 * ft2M2 } }
    const mid: Pt = [(joint.from[0] + joint.to[0]) / 2, (joint.from[1] + joint.to[1]) / 2]
    const lies = planOf(smaller).joints.some(({ from, to }) => {
      const length = Math.hypot(to[0] - from[0], to[1] - from[1])
      const off = ((to[0] - from[0]) * (mid[1] - from[1]) - (to[1] - from[1]) * (mid[0] - from[0])) / length
      return Math.abs(off) < 1e-9
    })
    expect(lies).toBe(true)
    const again = bandOnJoint({
      slabId: site.slabs[0]!.id,
      from: joint.to,
      to: joint.from,
      widthM: ftM,
      finishId: site.slabs[0]!.finishId,
    })(banded)
    expect(again.ok && again.value.wishes.length).toBe(1)
  })
})

describe('planning anew', () => {
  it('leaves a locked joint where it is, lock and id, and searches the rest around it', () => {
    const site = acceptedSite(bigRect)
    const part = site.accepted[0]!
    const locked: Site = {
      ...site,
      capacity: { capM2: 450 * ft2M2 },
      accepted: [{ ...part, joints: part.joints.map((joint, i) => (i === 0 ? { ...joint, locked: true } : joint)) }],
    }
    const before = facesOf(locked).joints.find(({ id }) => id === part.joints[0]!.id)!
    const again = replanRest(locked, locked.slabs[0]!.id, 'whole', { budget: 'small' })
    if (!again.ok) throw new Error(JSON.stringify(again.error))
    const done = acceptPours(locked, again.value.offer)
    if (!done.ok) throw new Error(JSON.stringify(done.error))
    const after = facesOf(done.value)
    const kept = after.joints.filter(({ id }) => id === before.id)
    expect(done.value.accepted[0]!.joints.find(({ id }) => id === before.id)).toEqual(locked.accepted[0]!.joints[0])
    expect(kept.reduce((sum, { lengthM }) => sum + lengthM, 0)).toBe(before.lengthM)
    expect(after.findings).toEqual([])
    expect(after.faces.every(({ pourId, areaM2 }) => pourId !== null && areaM2 <= 450 * ft2M2 * (1 + 1e-9))).toBe(true)
    expect(after.faces.reduce((sum, { areaM2 }) => sum + areaM2, 0)).toBeCloseTo(2400 * ft2M2, 9)
  })

  it('leaves a locked pour bit for bit, whatever is required around it', () => {
    const site = acceptedSite(bigRect)
    const part = site.accepted[0]!
    const [first] = part.pours
    const locked = withWish(
      {
        ...site,
        capacity: { capM2: 450 * ft2M2 },
        accepted: [
          { ...part, pours: part.pours.map(p => (p === first ? { ...p, lock: { shape: true, time: false } } : p)) },
        ],
      },
      [at(0, 13), at(60, 13)],
    )
    const before = facesOf(locked).faces.find(({ pourId }) => pourId === first!.id)!
    const again = replanRest(locked, locked.slabs[0]!.id, 'whole', { budget: 'small' })
    if (!again.ok) throw new Error(JSON.stringify(again.error))
    const done = acceptPours(locked, again.value.offer)
    if (!done.ok) throw new Error(JSON.stringify(done.error))
    const after = facesOf(done.value).faces.find(({ pourId }) => pourId === first!.id)!
    expect(after.areaM2).toBe(before.areaM2)
    // Where a neighbor's joint meets a straight edge is no corner of its own.
    const corners = ({ region: { outer } }: typeof after) =>
      new Set(
        outer.flatMap(({ from: [x, y], to }, i) => {
          const [px, py] = outer[(i + outer.length - 1) % outer.length]!.from
          return Math.abs((x - px) * (to[1] - y) - (y - py) * (to[0] - x)) > 1e-6 ? [`${x} ${y}`] : []
        }),
      )
    expect(corners(before).size).toBe(4)
    for (const corner of corners(before)) expect(corners(after).has(corner), corner).toBe(true)
    expect(facesOf(done.value).joints.some(({ from, to }) => feet(from)[1] === 13 && feet(to)[1] === 13)).toBe(true)
  })
})
