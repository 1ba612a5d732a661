import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { editSite } from '../../core/document/commands/editSite'
import { moveVertex } from '../../core/document/commands/moveVertex'
import { pourGround } from '../../core/document/commands/pourGround'
import { splitEdge } from '../../core/document/commands/splitEdge'
import { serializeSite } from '../../core/document/serializeSite'
import { sitePaths } from '../../core/document/sitePaths'
import { resolvePath } from '../../core/geometry/resolvePath'
import { ringArea } from '../../core/geometry/ringArea'
import { pourFaces } from '../../core/pours/pourFaces'
import { commitStep, currentDocument, redoStep, startHistory, undoStep } from '../../renderer/store/history'
import { driveway } from '../../samples/sites/driveway'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import type { Site } from '../../shared/document/site'
import { mulberry32 } from '../geometry/mulberry32'
import { done, faultsOf } from './edit'
import { randomCommand } from './randomCommands'

const wrongWay = (site: Site) =>
  sitePaths(site).filter(({ path, field, mayBeOpen }) => {
    if (mayBeOpen || field.includes('/poured/')) return false
    const area = ringArea(resolvePath(path, path.id).ring)
    return /\/(openings|courtyards)\//.test(field) ? area > 0 : area < 0
  })

const acceptedIds = (site: Site) =>
  site.accepted.flatMap(({ pours, joints }) => [...pours, ...joints].map(({ id }) => id))

describe('any run of commands', () => {
  it('keeps every invariant, tells every loss, and is undone and redone to the very same documents', () => {
    let applied = 0
    let tried = 0
    fc.assert(
      fc.property(fc.integer(), seed => {
        const random = mulberry32(seed)
        const start = random() < 0.7 ? lPatioAccepted() : driveway()
        const frozen = serializeSite(start)
        let history = startHistory(start)
        for (let step = 0; step < 14; step++) {
          const site = currentDocument(history)
          const before = serializeSite(site)
          const result = randomCommand(site, random)(site)
          tried += 1
          expect(serializeSite(site)).toBe(before)
          if (!result.ok) {
            expect(result.error.length).toBeGreaterThan(0)
            continue
          }
          applied += 1
          const { value, findings } = result
          expect(faultsOf(value)).toEqual([])
          expect(wrongWay(value)).toEqual([])
          expect(value.nextId).toBeGreaterThanOrEqual(site.nextId)
          const left = acceptedIds(value)
          const gone = acceptedIds(site).filter(id => !left.includes(id))
          if (gone.length > 0) expect(findings.map(({ code }) => code)).toContain('acceptedRemoved')
          history = commitStep(history, 'edit', value)
        }
        const last = currentDocument(history)
        let back = history
        for (let i = 0; i < 20; i++) back = undoStep(back)
        expect(currentDocument(back)).toBe(start)
        expect(serializeSite(currentDocument(back))).toBe(frozen)
        for (let i = 0; i < 20; i++) back = redoStep(back)
        expect(currentDocument(back)).toBe(last)
      }),
      { seed: 41, numRuns: 40 },
    )
    // Most of what is tried must go through, or this proves little.
    expect(applied / tried).toBeGreaterThan(0.7)
  })
})

describe('an edit that does nothing', () => {
  it('gives back the same document', () => {
    const site = lPatioAccepted()
    expect(done(editSite(site, () => undefined))).toBe(site)
    const vertex = site.slabs[0]!.outline.vertices[0]!
    expect(done(moveVertex(vertex.id, vertex.at)(site))).toBe(site)
  })
})

describe('accepted pours', () => {
  it('each keep a face of their own while corners move a little', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            corner: fc.nat(5),
            x: fc.double({ min: -1.5, max: 1.5, noNaN: true }),
            y: fc.double({ min: -1.5, max: 1.5, noNaN: true }),
          }),
          { minLength: 1, maxLength: 6 },
        ),
        moves => {
          let site = lPatioAccepted()
          for (const { corner, x, y } of moves) {
            const vertex = site.slabs[0]!.outline.vertices[corner]!
            const home = lPatioAccepted().slabs[0]!.outline.vertices[corner]!
            site = done(moveVertex(vertex.id, [home.at[0] + x, home.at[1] + y])(site))
          }
          const [part] = site.accepted
          const faces = pourGround(site.slabs[0]!, 'whole').flatMap(region => pourFaces(region, part!).faces)
          const pours = faces.flatMap(({ pourId }) => pourId ?? [])
          expect([...pours].sort()).toEqual(part!.pours.map(({ id }) => id).sort())
        },
      ),
      { seed: 12, numRuns: 40 },
    )
  })

  it('stand at the same places after an edge is split anywhere', () => {
    fc.assert(
      fc.property(fc.nat(5), fc.double({ min: 0.02, max: 0.98, noNaN: true }), (edge, t) => {
        const site = lPatioAccepted()
        const after = done(splitEdge(site.slabs[0]!.outline.edges[edge]!.id, t)(site))
        const placesOf = (each: Site) => each.accepted[0]!.joints.flatMap(({ ends }) => ends.map(({ last }) => last))
        placesOf(after).forEach((place, i) => {
          const was = placesOf(site)[i]!
          expect(Math.hypot(place[0] - was[0], place[1] - was[1])).toBeLessThan(1e-9)
        })
        expect(after.accepted[0]!.pours.map(({ seed }) => seed)).toEqual(
          site.accepted[0]!.pours.map(({ seed }) => seed),
        )
      }),
      { seed: 5, numRuns: 60 },
    )
  })
})
