import { describe, expect, it } from 'vitest'
import { addWall } from '../../core/document/commands/addCaster'
import { changeBorder } from '../../core/document/commands/changeEntity'
import { deleteVertex } from '../../core/document/commands/deleteVertex'
import { moveVertex } from '../../core/document/commands/moveVertex'
import { pourGround } from '../../core/document/commands/pourGround'
import { setDimension } from '../../core/document/commands/setDimension'
import { setEdgeRadius, setEdgeRise } from '../../core/document/commands/setEdgeRise'
import { setWallLength } from '../../core/document/commands/setWallLength'
import { splitEdge } from '../../core/document/commands/splitEdge'
import { resolvePath } from '../../core/geometry/resolvePath'
import { ringArea } from '../../core/geometry/ringArea'
import { pourFaces } from '../../core/pours/pourFaces'
import { feetToMeters as ft } from '../../core/units/convert'
import { lPatio } from '../../samples/sites/lPatio'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import { plainRectangle } from '../../samples/sites/plainRectangle'
import { chain, done, faultsOf, outlineArea, refusal } from './edit'

const site = lPatio()
const outline = site.slabs[0]!.outline
const border = (at: typeof site) => at.slabs[0]!.borders[0]!.edges as string[]

describe('a split edge', () => {
  it('keeps its id on the first half, and the second joins every list that held it', () => {
    const edge = outline.edges[1]!.id
    const result = splitEdge(edge, 0.25)(site)
    const after = done(result)
    const added = after.slabs[0]!.outline.edges[2]!.id
    expect(result.ok && result.made).toContain(added)
    expect(after.slabs[0]!.outline.edges[1]!.id).toBe(edge)
    expect(border(after)).toEqual([border(site)[0], added, ...border(site).slice(1)])
    expect(faultsOf(after)).toEqual([])
    expect(done(splitEdge(outline.edges[0]!.id, 0.5)(site)).slabs[0]!.againstExisting).toHaveLength(2)
  })

  it('of an arc leaves both halves on the arc', () => {
    const arched = done(setEdgeRise(outline.edges[0]!.id, 2)(site))
    const before = outlineArea(arched)
    for (const t of [0.1, 0.5, 0.93]) {
      const after = done(splitEdge(outline.edges[0]!.id, t)(arched))
      expect(outlineArea(after)).toBeCloseTo(before, 9)
    }
  })

  it('comes together again when the new corner goes, arcs too', () => {
    const arched = done(setEdgeRise(outline.edges[0]!.id, 2)(site))
    const split = splitEdge(outline.edges[0]!.id, 0.3)(arched)
    const vertex = done(split).slabs[0]!.outline.vertices[1]!.id
    const after = done(deleteVertex(vertex)(done(split)))
    expect(outlineArea(after)).toBeCloseTo(outlineArea(arched), 9)
    expect(after.slabs[0]!.outline.edges.map(({ id }) => id)).toEqual(outline.edges.map(({ id }) => id))
    expect(border(after)).toEqual(border(site))
  })
})

describe('a corner', () => {
  it('that goes leaves the earlier edge, which takes over the lists of the later, with a note', () => {
    const result = deleteVertex(outline.vertices[1]!.id)(site)
    const after = done(result)
    expect(result.ok && result.findings.map(({ code }) => code)).toContain('membershipsMerged')
    expect(border(after)).toContain(outline.edges[0]!.id)
    expect(border(after)).not.toContain(outline.edges[1]!.id)
    expect(faultsOf(after)).toEqual([])
  })

  it('is refused where too few would be left', () => {
    const small = plainRectangle()
    const [a, b] = small.slabs[0]!.outline.vertices.map(({ id }) => id)
    expect(refusal(deleteVertex(b!)(done(deleteVertex(a!)(small))))).toBe('pathTooShort')
  })

  it('dragged across the slab turns the ring around, ids and areas kept', () => {
    const triangle = done(deleteVertex(plainRectangle().slabs[0]!.outline.vertices[3]!.id)(plainRectangle()))
    const [a, b, c] = triangle.slabs[0]!.outline.vertices
    const mirrored = [a!.at[0] + b!.at[0] - c!.at[0], a!.at[1] - (c!.at[1] - a!.at[1])] as const
    const after = done(moveVertex(c!.id, mirrored)(triangle))
    expect(outlineArea(after)).toBeCloseTo(outlineArea(triangle), 9)
    expect(faultsOf(after)).toEqual([])
  })

  it('moves in its own slab only: all else is the very same', () => {
    const after = done(moveVertex(outline.vertices[2]!.id, [16, 7])(site))
    expect(after.casters).toBe(site.casters)
    expect(after.slabs[0]!.openings).toBe(site.slabs[0]!.openings)
    expect(after.slabs[0]!.borders).toBe(site.slabs[0]!.borders)
  })
})

describe('an arc', () => {
  it('by radius has that radius, the short and the long way around', () => {
    for (const longWay of [false, true])
      for (const bulges of ['left', 'right'] as const) {
        const after = done(setEdgeRadius(outline.edges[1]!.id, 4, { bulges, longWay })(site))
        const edge = resolvePath(after.slabs[0]!.outline, 's').ring.find(
          ({ edgeId }) => edgeId === outline.edges[1]!.id,
        )
        expect(edge!.arc!.radiusM).toBeCloseTo(4, 12)
        expect(Math.sign(edge!.arc!.sweepRad)).toBe(bulges === 'right' ? 1 : -1)
      }
  })

  it('that cannot span its ends is refused with the least radius', () => {
    const result = setEdgeRadius(outline.edges[1]!.id, 1, { bulges: 'right' })(site)
    expect(!result.ok && result.error[0]).toMatchObject({ code: 'radiusTooSmall', values: { leastM: ft(10) } })
  })
})

describe('a typed length', () => {
  it('moves the side along, so that a rectangle stays one', () => {
    const plain = plainRectangle()
    const edge = plain.slabs[0]!.outline.edges[0]!
    const [a, , , d] = plain.slabs[0]!.outline.vertices
    const height = Math.hypot(d!.at[0] - a!.at[0], d!.at[1] - a!.at[1])
    for (const moves of ['start', 'end', 'both'] as const) {
      const after = done(setDimension(edge.id, 5, { moves, with: 'side' })(plain))
      expect(outlineArea(after)).toBeCloseTo(5 * height, 9)
    }
  })

  it('keeps the shape of an arc', () => {
    const arched = done(setEdgeRise(outline.edges[0]!.id, 2)(site))
    const after = done(setDimension(outline.edges[0]!.id, 10, { moves: 'end', with: 'corner' })(arched))
    const edge = resolvePath(after.slabs[0]!.outline, 's').ring[0]!
    expect(edge.arc!.radiusM * edge.arc!.sweepRad).toBeCloseTo(10, 9)
  })

  it('of a fence carries what lies beyond the end that moves', () => {
    const fenced = chain(
      site,
      addWall({
        name: 'Fence',
        line: [
          [0, 0],
          [0, 4],
          [3, 4],
          [3, 0],
        ],
        heightM: 2,
      }),
    )
    const { id } = fenced.casters.at(-1)!
    const line = (at: typeof site) =>
      at.casters.flatMap(caster => (caster.id === id && caster.kind === 'wall' ? caster.line : []))
    expect(line(chain(fenced, setWallLength(id, 1, 5, 'end')))).toEqual([
      [0, 0],
      [0, 4],
      [5, 4],
      [5, 0],
    ])
    expect(line(chain(fenced, setWallLength(id, 1, 5, 'start')))).toEqual([
      [-2, 0],
      [-2, 4],
      [3, 4],
      [3, 0],
    ])
    expect(line(chain(fenced, setWallLength(id, 1, 5, 'both')))).toEqual([
      [-1, 0],
      [-1, 4],
      [4, 4],
      [4, 0],
    ])
    for (const [index, lengthM] of [
      [1, 0],
      [3, 2],
      [1, Number.NaN],
    ] as const)
      expect(refusal(setWallLength(id, index, lengthM, 'end')(fenced))).toBe('badMeasure')
    expect(refusal(setWallLength(site.slabs[0]!.id, 0, 2, 'end')(fenced))).toBe('entityMissing')
  })

  it('of nothing is refused', () => {
    for (const length of [0, -1, Number.NaN, Infinity])
      expect(refusal(setDimension(outline.edges[0]!.id, length, { moves: 'end', with: 'corner' })(site))).toBe(
        'badMeasure',
      )
  })
})

describe('accepted joints', () => {
  const accepted = lPatioAccepted()
  const ring = accepted.slabs[0]!.outline

  it('keep their share of an edge that grows, and remember the new place', () => {
    const longer = done(setDimension(ring.edges[0]!.id, ft(60), { moves: 'end', with: 'side' })(accepted))
    const end = longer.accepted[0]!.joints[1]!.ends[0]
    expect(end.anchor).toEqual(accepted.accepted[0]!.joints[1]!.ends[0].anchor)
    expect(end.last[0]).toBeCloseTo((ft(60) * 22) / 50, 9)
  })

  it('go over to the second half of a split edge, at the very same place', () => {
    const split = done(splitEdge(ring.edges[0]!.id, 0.25)(accepted))
    const end = split.accepted[0]!.joints[1]!.ends[0]
    expect(end.anchor).toMatchObject({ on: 'edge', edgeId: split.slabs[0]!.outline.edges[1]!.id })
    expect(end.anchor.on === 'edge' && end.anchor.t).toBeCloseTo((0.44 - 0.25) / 0.75, 12)
    expect(end.last[0]).toBeCloseTo(ft(22), 9)
    const undoneEdge = done(deleteVertex(split.slabs[0]!.outline.vertices[1]!.id)(split))
    const back = undoneEdge.accepted[0]!.joints[1]!.ends[0]
    expect(back.anchor).toMatchObject({ on: 'edge', edgeId: ring.edges[0]!.id })
    expect(back.anchor.on === 'edge' && back.anchor.t).toBeCloseTo(0.44, 12)
  })

  it('keep their pours where a joint sweeps over a seed', () => {
    // The house edge grows to the left; its joint, at the same share, leans over the seed of pour 2.
    const wider = done(setDimension(ring.edges[0]!.id, ft(100), { moves: 'start', with: 'side' })(accepted))
    const [part] = wider.accepted
    const [region] = pourGround(wider.slabs[0]!, 'whole')
    const { faces, findings } = pourFaces(region!, part!)
    expect(findings).toEqual([])
    const faceOf = (number: string) =>
      faces.find(({ pourId }) => pourId === part!.pours.find(p => p.number === number)!.id)
    const edgesOf = (number: string) => faceOf(number)!.region.outer.map(({ edgeId }) => edgeId)
    expect(edgesOf('2')).toContain(ring.edges[5]!.id)
    expect(edgesOf('3')).toContain(ring.edges[1]!.id)
    expect(part!.pours[1]!.seed).not.toEqual(accepted.accepted[0]!.pours[1]!.seed)
  })

  it('go on in the field when the border is poured on its own, and come back', () => {
    const border = accepted.slabs[0]!.borders[0]!.id
    const alone = done(changeBorder(border, { placed: 'after' })(accepted))
    expect(alone.accepted[0]!.part).toBe('field')
    const pours = pourGround(alone.slabs[0]!, 'field').flatMap(region =>
      pourFaces(region, alone.accepted[0]!).faces.map(({ pourId }) => pourId),
    )
    expect([...pours].sort()).toEqual(accepted.accepted[0]!.pours.map(({ id }) => id).sort())
    const back = done(changeBorder(border, { placed: 'withField' })(alone))
    expect(back.accepted[0]!.part).toBe('whole')
    for (const each of [alone, back])
      each.accepted[0]!.joints.forEach(({ ends }, j) => {
        ends.forEach(({ last }, e) => {
          const was = accepted.accepted[0]!.joints[j]!.ends[e]!.last
          expect(Math.hypot(last[0] - was[0], last[1] - was[1])).toBeLessThan(1e-9)
        })
      })
  })

  it('keep their pours when the boundary moves over a seed', () => {
    const after = chain(
      accepted,
      moveVertex(ring.vertices[5]!.id, [ft(13), ft(42)]),
      moveVertex(ring.vertices[4]!.id, [ft(28), ft(30)]),
    )
    expect(after.accepted[0]!.pours.map(({ id }) => id)).toEqual(accepted.accepted[0]!.pours.map(({ id }) => id))
    expect(faultsOf(after)).toEqual([])
  })
})

it('a ring keeps its area however it is walked', () => {
  expect(ringArea(resolvePath(outline, 's').ring)).toBeGreaterThan(0)
})
