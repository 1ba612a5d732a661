import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
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
import { drawCommands, randomCommand } from './randomCommands'

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

/** The commands a folder exports, by the type they are declared with. */
function declaredCommands(): readonly string[] {
  const folder = join(import.meta.dirname, '../../core/document/commands')
  return readdirSync(folder).flatMap(file => {
    const [, ...exported] = readFileSync(join(folder, file), 'utf8').split(/^export (?:const|function) /m)
    return exported.flatMap(text => {
      const [, name = '', head = ''] = /^(\w+)([\s\S]*?)(?:\n}|\n\n|$)/.exec(text) ?? []
      // Its result is a Command; what is given a change to make of an edge is no command of its own.
      const isCommand = /\): Command(?: =>|\s*{)|^: Command =|= (?:change<|setField\()/.test(head)
      return isCommand && name !== 'editEdge' ? [name] : []
    })
  })
}

describe('every command', () => {
  it('is drawn, goes through, keeps every invariant, and is undone and done again', () => {
    const random = mulberry32(77)
    const begun = lPatioAccepted()
    const names = Object.keys(drawCommands(begun, random))
    expect(declaredCommands().filter(name => !names.includes(name))).toEqual([])
    expect(declaredCommands().length).toBeGreaterThan(90)
    const applied = new Set<string>()
    let history = startHistory(begun)
    // What one command makes the next ones need: a tape to be measured, a log to be corrected.
    for (let round = 0; round < 3; round++)
      for (const name of names)
        for (const command of drawCommands(currentDocument(history), random)[name]!) {
          const site = currentDocument(history)
          const result = command(site)
          if (!result.ok || result.value === site) continue
          expect(faultsOf(result.value), name).toEqual([])
          expect(wrongWay(result.value), name).toEqual([])
          const step = commitStep(history, name, result.value)
          expect(currentDocument(undoStep(step))).toBe(site)
          expect(currentDocument(redoStep(undoStep(step)))).toBe(result.value)
          applied.add(name)
          history = step
        }
    expect(declaredCommands().filter(name => !applied.has(name))).toEqual([])
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
