import { describe, expect, it } from 'vitest'
import { addSpot, addWay, setWayHours } from '../../core/document/commands/addAccess'
import { addBuilding, addTree } from '../../core/document/commands/addCaster'
import { addSlab } from '../../core/document/commands/addSlab'
import { addWish } from '../../core/document/commands/addWish'
import { changeBorder, changeCaster, changeSlab } from '../../core/document/commands/changeEntity'
import { copySelection, pasteFrom } from '../../core/document/commands/copySelection'
import { deleteFinish, deleteSelection } from '../../core/document/commands/deleteSelection'
import { lineUp, lineUpCorners, selectionBox } from '../../core/document/commands/lineUp'
import { mirrorSelection, moveSelection, nudge, turnSelection } from '../../core/document/commands/moveSelection'
import { addFinish, setCapacity, setNorth, setPlace, setSetting } from '../../core/document/commands/setSite'
import { addBorder, addOpening, addSteps, setThickened } from '../../core/document/commands/slabParts'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { feetToMeters as ft, inchesToMeters as inch, squareFeetToM2 } from '../../core/units/convert'
import { lPatio } from '../../samples/sites/lPatio'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import { plainRectangle } from '../../samples/sites/plainRectangle'
import type { Site } from '../../shared/document/site'
import { chain, done, faultsOf, refusal } from './edit'

const site = lPatio()
const slab = site.slabs[0]!
const opening = slab.openings[0]!

const empty: Site = {
  format: 'slabwright-site',
  version: 1,
  id: 'x',
  name: 'Empty',
  nextId: 1,
  units: 'ftin',
  place: { latDeg: 40, lonDeg: -90, elevationM: 0, zone: 'America/Chicago', northDeg: 0 },
  finishes: [],
  slabs: [],
  casters: [],
  points: [],
  wishes: [],
  accepted: [],
}

describe('drawing from an empty site', () => {
  it('gives the areas of the shapes that were asked for', () => {
    const drawn = chain(
      empty,
      addSlab({ name: 'Patio', outline: { kind: 'rectangle', at: [0, 0], widthM: ft(24), depthM: ft(14) } }),
      addSlab({ name: 'Disk', outline: { kind: 'circle', center: [40, 40], radiusM: 3 } }),
      addSlab({
        name: 'Clockwise',
        outline: {
          kind: 'corners',
          corners: [{ at: [-20, 0] }, { at: [-20, 5], riseM: 1 }, { at: [-15, 5] }, { at: [-15, 0], roundM: 0.5 }],
        },
      }),
    )
    expect(faultsOf(drawn)).toEqual([])
    const [patio, disk, clockwise] = drawn.slabs.map(resolveSlab)
    expect(patio!.netAreaM2).toBeCloseTo(squareFeetToM2(336), 9)
    expect(disk!.netAreaM2).toBeCloseTo(Math.PI * 9, 9)
    // Walked clockwise, right of travel is inside: a circular segment of rise 1 over a chord of 5 is cut out
    // (R = 3.625, θ = 4 atan(2/5)), and the corner loses (1 − π/4) r².
    const theta = 4 * Math.atan(0.4)
    const segment = (3.625 ** 2 * (theta - Math.sin(theta))) / 2
    expect(clockwise!.netAreaM2).toBeCloseTo(25 - segment - (1 - Math.PI / 4) * 0.25, 9)
    expect(clockwise!.findings).toEqual([])
  })

  it('stacks borders inward and lists thickened edges', () => {
    const patio = done(addSlab({ name: 'P', outline: { kind: 'rectangle', at: [0, 0], widthM: 10, depthM: 6 } })(empty))
    const [id, path, edge] = [patio.slabs[0]!.id, patio.slabs[0]!.outline.id, patio.slabs[0]!.outline.edges[0]!.id]
    const border = {
      pathId: path,
      edges: 'all',
      widthM: 0.5,
      finishId: patio.finishes[0]!.id,
      placed: 'withField',
    } as const
    const bordered = chain(
      patio,
      addBorder(id, border),
      addBorder(id, border),
      setThickened(id, [edge], { depthM: 0.2, widthM: 0.3 }),
    )
    expect(resolveSlab(bordered.slabs[0]!).fieldAreaM2).toBeCloseTo(8 * 4, 9)
    const wider = done(changeBorder(bordered.slabs[0]!.borders[1]!.id, { widthM: 1 })(bordered))
    expect(resolveSlab(wider.slabs[0]!).fieldAreaM2).toBeCloseTo(7 * 3, 9)
    expect(done(setThickened(id, [edge], null)(bordered)).slabs[0]!.thickened).toEqual([])
  })

  it('keeps heights as elevations above the datum', () => {
    const house = done(
      addBuilding({
        name: 'House',
        footprint: { kind: 'rectangle', at: [0, 0], widthM: 10, depthM: 8 },
        baseM: -0.3,
        height: { stories: 2 },
        roof: { form: 'gable', risePer12: 6, alongEdge: 0 },
      })(empty),
    ).casters[0]!
    // 10 ft a story and 18 in of overhang: common practice, no source.
    expect(house).toMatchObject({ eaveM: ft(20) - 0.3, overhangM: inch(18) })
  })
})

describe('refusals', () => {
  it('name what is wrong and leave the site alone', () => {
    expect(refusal(changeSlab(slab.id, { thicknessM: -1 })(site))).toBe('outOfRange')
    expect(refusal(setCapacity({ capM2: 0 })(site))).toBe('outOfRange')
    expect(refusal(setPlace({ zone: 'Nowhere/Land' })(site))).toBe('unknownZone')
    expect(refusal(setSetting('overhangM', Number.NaN)(site))).toBe('badNumber')
    expect(refusal(moveSelection([slab.id], [5000, 0])(done(addSpot('pump', [0, 0])(site))))).toBe('limitExceeded')
    expect(refusal(changeSlab('s999', { name: 'x' })(site))).toBe('entityMissing')
    expect(refusal(changeCaster(site.casters[1]!.id, { eaveM: 3 })(site))).toBe('unknownField')
    const tree = done(
      addTree({
        name: 'Maple',
        at: [0, 0],
        baseM: 1,
        heightM: 8,
        trunkHeightM: 2,
        crownRadiusM: 3,
        density: 'dense',
        leaves: 'evergreen',
      })(site),
    )
    const maple = tree.casters.at(-1)!.id
    expect(refusal(changeCaster(maple, { trunkM: 9 })(tree))).toBe('leavesAboveTop')
    expect(refusal(changeCaster(maple, { topM: 3 })(tree))).toBe('leavesAboveTop')
    expect(done(changeCaster(maple, { topM: 3.01 })(tree)).casters.at(-1)).toMatchObject({ trunkM: 3, topM: 3.01 })
    expect(refusal(moveSelection(['b9999'], [1, 1])(site))).toBe('nothingChosen')
    expect(refusal(mirrorSelection([slab.id], [1, 1], [1, 1])(site))).toBe('badMeasure')
    expect(refusal(deleteFinish(slab.finishId)(site))).toBe('finishInUse')
    expect(
      refusal(addSteps(slab.id, { edgeId: 'e999', fromT: 0, widthM: 1, risers: 1, riserM: 0.1, treadM: 0.3 })(site)),
    ).toBe('danglingId')
  })
})

describe('a moved slab', () => {
  const accepted = lPatioAccepted()

  it('takes openings, points, joints and seeds along, and turns its fall', () => {
    const moved = done(turnSelection([accepted.slabs[0]!.id], [0, 0], 90)(accepted))
    expect(resolveSlab(moved.slabs[0]!).netAreaM2).toBeCloseTo(resolveSlab(accepted.slabs[0]!).netAreaM2, 9)
    const [x, y] = accepted.accepted[0]!.pours[0]!.seed
    expect(moved.accepted[0]!.pours[0]!.seed).toEqual([-y, x])
    const [jx, jy] = accepted.accepted[0]!.joints[0]!.ends[1].last
    expect(moved.accepted[0]!.joints[0]!.ends[1].last).toEqual([-jy, jx])
    expect(moved.points[0]!.at).toEqual([-accepted.points[0]!.at[1], accepted.points[0]!.at[0]])
    // Fall was straight up the drawing; a quarter turn to the left makes it point left: 270° clockwise from up.
    expect(moved.slabs[0]!.slope!.towardDeg).toBe(270)
    expect(moved.casters).toBe(accepted.casters)
  })

  it('that is mirrored keeps its areas, edges, steps and pours', () => {
    const edge = accepted.slabs[0]!.outline.edges[1]!.id
    const stepped = done(
      addSteps(accepted.slabs[0]!.id, {
        edgeId: edge,
        fromT: 0.1,
        widthM: ft(4),
        risers: 2,
        riserM: 0.15,
        treadM: 0.3,
      })(accepted),
    )
    const mirrored = done(mirrorSelection([stepped.slabs[0]!.id], [0, 0], [0, 1])(stepped))
    const [was, now] = [resolveSlab(stepped.slabs[0]!), resolveSlab(mirrored.slabs[0]!)]
    expect(now.netAreaM2).toBeCloseTo(was.netAreaM2, 9)
    expect(now.borders[0]!.areaM2).toBeCloseTo(was.borders[0]!.areaM2, 9)
    expect(now.findings).toEqual(was.findings)
    // 4 ft of 20 from 2 ft on: seen from the other end it starts 14 ft in.
    expect(mirrored.slabs[0]!.steps[0]!.fromT).toBeCloseTo(0.7, 12)
    const lasts = (each: Site) => each.accepted[0]!.joints.flatMap(({ ends }) => ends.map(({ last }) => last))
    lasts(mirrored).forEach(([x, y], i) => {
      expect(x).toBeCloseTo(-lasts(stepped)[i]![0], 9)
      expect(y).toBeCloseTo(lasts(stepped)[i]![1], 9)
    })
    const back = done(mirrorSelection([stepped.slabs[0]!.id], [0, 0], [0, 1])(mirrored))
    expect(back.slabs[0]!.outline.edges.map(({ id }) => id).sort()).toEqual(
      stepped.slabs[0]!.outline.edges.map(({ id }) => id).sort(),
    )
    expect(faultsOf(back)).toEqual([])
  })

  it('takes its wishes and its pattern along, turned and in the mirror', () => {
    const { id, finishId } = slab
    const alone: Site = {
      ...chain(
        { ...site, wishes: [] },
        addWish(id, { kind: 'direction', deg: 30, relativeTo: 'pattern' }),
        addWish(id, { kind: 'direction', deg: 20, relativeTo: 'drawing' }),
        addWish(id, {
          kind: 'forbiddenLine',
          line: [
            [1, 2],
            [3, 4],
          ],
        }),
      ),
    }
    const told = ({ wishes, finishes }: Site) => ({
      degs: wishes.flatMap(wish => (wish.kind === 'direction' ? [wish.deg] : [])),
      line: wishes.flatMap(wish => (wish.kind === 'forbiddenLine' ? wish.line : [])),
      pattern: finishes.find(finish => finish.id === finishId)?.patternDeg ?? 0,
    })
    expect(told(chain(alone, turnSelection([id], [0, 0], 90)))).toEqual({
      degs: [30, 110],
      line: [
        [-2, 1],
        [-4, 3],
      ],
      pattern: told(alone).pattern + 90,
    })
    const mirrored = chain(alone, mirrorSelection([id], [0, 0], [0, 1]))
    expect(told(mirrored)).toEqual({
      degs: [-30, 160],
      line: [
        [-1, 2],
        [-3, 4],
      ],
      pattern: 180 - told(alone).pattern,
    })
    // A pattern that lies on another slab as well stays where it is.
    const two = chain(alone, copySelection([id], [30, 0]))
    expect(told(chain(two, turnSelection([id], [0, 0], 90))).pattern).toBe(told(alone).pattern)
  })

  it('that is poured may be moved but not mirrored or deleted', () => {
    const pour = accepted.accepted[0]!.pours[0]!
    const logged: Site = {
      ...accepted,
      log: [
        { id: `l${accepted.nextId}`, pourId: pour.id, date: '2026-07-21', loads: [], strips: [], used: [], notes: '' },
      ],
      accepted: [
        {
          ...accepted.accepted[0]!,
          pours: accepted.accepted[0]!.pours.map(each =>
            each === pour
              ? {
                  ...each,
                  poured: {
                    outline: {
                      id: `r${accepted.nextId + 1}`,
                      vertices: [
                        [0, 7],
                        [8, 7],
                        [8, 12],
                      ].map(([x, y], i) => ({
                        id: `v${accepted.nextId + 2 + i}`,
                        at: [x!, y!] as const,
                      })),
                      edges: [0, 1, 2].map(i => ({ id: `e${accepted.nextId + 5 + i}` })),
                    },
                    holes: [],
                    areaM2: 20,
                    logId: `l${accepted.nextId}`,
                  },
                }
              : each,
          ),
        },
      ],
      nextId: accepted.nextId + 8,
    }
    expect(faultsOf(logged)).toEqual([])
    const id = logged.slabs[0]!.id
    expect(refusal(mirrorSelection([id], [0, 0], [0, 1])(logged))).toBe('pouredFrozen')
    expect(refusal(deleteSelection([id])(logged))).toBe('pouredFrozen')
    const moved = done(moveSelection([id], [1, 0])(logged))
    expect(moved.accepted[0]!.pours[0]!.poured!.outline.vertices[0]!.at).toEqual([1, 7])
  })
})

describe('deleting', () => {
  it('tells what goes along, and leaves nothing that leads nowhere', () => {
    const ringed = done(
      addBorder(slab.id, {
        pathId: opening.path.id,
        edges: 'all',
        widthM: 0.2,
        finishId: slab.finishId,
        placed: 'after',
      })(site),
    )
    const result = deleteSelection([opening.id])(ringed)
    expect(result.ok && result.findings).toMatchObject([{ code: 'removedWith', values: { what: 'border' } }])
    expect(faultsOf(done(result))).toEqual([])
    const whole = deleteSelection([lPatioAccepted().slabs[0]!.id])(lPatioAccepted())
    expect(whole.ok && whole.findings.map(({ code }) => code)).toContain('acceptedRemoved')
    expect(done(whole).accepted).toEqual([])
  })

  it('an opening frees the joints that ended on it, with a check', () => {
    const accepted = lPatioAccepted()
    const edge = accepted.slabs[0]!.openings[0]!.path.edges[0]!.id
    const wished = done(
      addWish(accepted.slabs[0]!.id, {
        kind: 'required',
        line: [
          { anchor: { on: 'edge', edgeId: edge, t: 0.5 }, last: [0, 0] },
          { anchor: { on: 'free' }, last: [0, ft(29)] },
        ],
      })(accepted),
    )
    const result = deleteSelection([accepted.slabs[0]!.openings[0]!.id])(wished)
    expect(result.ok && result.findings.map(({ code }) => code)).toContain('anchorLost')
    const wish = done(result).wishes[0]!
    const end = wish.kind === 'required' ? wish.line[0] : undefined
    expect(end!.anchor).toEqual({ on: 'free' })
    expect(Math.hypot(end!.last[0] - ft(14), end!.last[1] - ft(29))).toBeCloseTo(ft(2), 9)
  })
})

describe('a copy', () => {
  it('has ids of its own throughout and the same area', () => {
    const result = copySelection([slab.id, opening.id], [30, 0])(site)
    const copied = done(result)
    expect(copied.slabs).toHaveLength(2)
    expect(faultsOf(copied)).toEqual([])
    expect(resolveSlab(copied.slabs[1]!).fieldAreaM2).toBeCloseTo(resolveSlab(slab).fieldAreaM2, 9)
    expect(copied.slabs[1]!.againstExisting).toEqual([copied.slabs[1]!.outline.edges[0]!.id])
    expect(copied.points).toHaveLength(6)
    expect(result.ok && result.made).toEqual([copied.slabs[1]!.id])
  })

  it('has a name of its own, counted on from the one it was copied from', () => {
    const [house] = site.casters
    const casters = (each: Site) => each.casters.map(({ name }) => name)
    const twice = chain(site, copySelection([house!.id], [30, 0]), copySelection([house!.id], [60, 0]))
    expect(casters(twice)).toEqual([...casters(site), `${house!.name} 2`, `${house!.name} 3`])
    // A copy of the second is the next, not "2 2".
    expect(casters(chain(twice, copySelection([twice.casters.at(-2)!.id], [90, 0]))).at(-1)).toBe(`${house!.name} 4`)
    const slabs = chain(site, copySelection([slab.id], [30, 0]))
    expect(slabs.slabs.map(({ name }) => name)).toEqual([slab.name, `${slab.name} 2`])
    expect(new Set(slabs.points.map(({ name }) => name)).size).toBe(6)
    // What has no name there keeps its own.
    const elsewhere = chain(empty, pasteFrom(site, [house!.id], [0, 0]), pasteFrom(site, [house!.id], [9, 0]))
    expect(casters(elsewhere)).toEqual([house!.name, `${house!.name} 2`])
  })

  it('from another site brings its finishes once', () => {
    const pasted = chain(
      plainRectangle(),
      pasteFrom(site, [slab.id, site.casters[0]!.id], [40, 40]),
      pasteFrom(site, [slab.id], [80, 80]),
    )
    expect(faultsOf(pasted)).toEqual([])
    expect(pasted.slabs).toHaveLength(3)
    const names = pasted.finishes.map(({ name }) => name)
    expect(new Set(names).size).toBe(names.length)
    expect(resolveSlab(pasted.slabs[2]!).netAreaM2).toBeCloseTo(resolveSlab(slab).netAreaM2, 9)
    const onto = done(pasteFrom(site, [opening.id], [0, 0])(plainRectangle()))
    expect(onto.slabs[0]!.openings).toHaveLength(1)
    expect(refusal(pasteFrom(site, [opening.id], [0, 0])(empty))).toBe('nothingChosen')
  })
})

describe('lining up and nudging', () => {
  it('moves each as a whole to the side of the first', () => {
    const [house, tree, fence] = site.casters.map(({ id }) => id)
    const lined = done(lineUp([house!, tree!, fence!], 'left')(site))
    for (const id of [tree!, fence!])
      expect(selectionBox(lined, [id])!.minX).toBeCloseTo(selectionBox(site, [house!])!.minX, 12)
    expect(refusal(lineUp([house!], 'left')(site))).toBe('nothingChosen')
    const [a, b, c] = slab.outline.vertices
    const straight = done(lineUpCorners([a!.id, b!.id, c!.id])(site))
    const [p, q, r] = straight.slabs[0]!.outline.vertices.map(({ at }) => at)
    expect((q![0] - p![0]) * (r![1] - p![1]) - (q![1] - p![1]) * (r![0] - p![0])).toBeCloseTo(0, 9)
    const nudged = done(nudge([opening.id], 'up', inch(1))(site))
    expect(selectionBox(nudged, [opening.id])!.minY).toBeCloseTo(ft(27) + inch(1), 12)
  })
})

describe('the site', () => {
  it('keeps north within a turn, and ways with their hours', () => {
    expect(done(setNorth(-35)(site)).place.northDeg).toBe(325)
    const way = done(addWay({ at: [1, 1], widthM: 1, open: [] })(empty))
    const open = [{ weekdays: [1, 2], from: '07:00', to: '18:00' }]
    expect(done(setWayHours(way.access!.ways[0]!.id, open)(way)).access!.ways[0]!.open).toEqual(open)
    const finished = done(addFinish({ name: 'Plank', pattern: 'plank', color: '#886644' })(site))
    expect(done(deleteFinish(finished.finishes[2]!.id)(finished)).finishes).toEqual(site.finishes)
  })

  it('takes openings drawn either way around', () => {
    const corners = [{ at: [2, 2] as const }, { at: [4, 2] as const }, { at: [4, 4] as const }, { at: [2, 4] as const }]
    for (const walk of [corners, [...corners].reverse()]) {
      const cut = done(addOpening(slab.id, { shape: { kind: 'corners', corners: walk }, kind: 'planter' })(site))
      expect(resolveSlab(cut.slabs[0]!).netAreaM2).toBeCloseTo(resolveSlab(slab).netAreaM2 - 4, 9)
    }
  })
})
