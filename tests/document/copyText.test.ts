/** The text a selection is copied as: read through the door of files, pasted with ids of its own. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { pasteFrom } from '../../core/document/commands/copySelection'
import { readCopy, writeCopy } from '../../core/document/copyText'
import { invariants } from '../../core/document/invariants'
import { readSite } from '../../core/document/readSite'
import { emptySite } from '../../renderer/app/emptySite'
import type { Site } from '../../shared/document/site'

const samples = readdirSync('samples').filter(name => name.endsWith('.slabwright.json'))
const sampleOf = (name: string): Site => {
  const read = readSite(readFileSync(`samples/${name}`))
  if (!read.ok) throw new Error(`${name} cannot be read`)
  return read.value
}
const allOf = ({ slabs, casters }: Site) => [...slabs, ...casters].map(({ id }) => id)

describe.each(samples)('%s', name => {
  const site = sampleOf(name)

  it('is pasted whole into an empty site, which keeps every rule', () => {
    const read = readCopy(writeCopy(site, allOf(site)))
    if (!read.ok) throw new Error(JSON.stringify(read.error))
    const pasted = pasteFrom(read.value.site, read.value.ids, [3, -2])(emptySite('other', 'Other'))
    if (!pasted.ok) throw new Error(JSON.stringify(pasted.error))
    const { value } = pasted
    expect(value.slabs).toHaveLength(site.slabs.length)
    expect(value.casters).toHaveLength(site.casters.length)
    expect(invariants(value)).toEqual([])
    const [first, copy] = [site.slabs[0]!.outline.vertices[0]!.at, value.slabs[0]!.outline.vertices[0]!.at]
    expect(copy[0]).toBeCloseTo(first[0] + 3, 9)
    expect(copy[1]).toBeCloseTo(first[1] - 2, 9)
  })

  it('carries no log, no prices and no pictures along', () => {
    const text = writeCopy(site, allOf(site))
    expect(text).not.toMatch(/"(?:log|prices|stock|assets|picture|crew|accepted":\[\{)"/)
  })
})

describe('any other text', () => {
  const site = sampleOf('l-patio.slabwright.json')
  const whole = JSON.parse(writeCopy(site, allOf(site))) as Record<string, unknown>
  it.each([
    ['words', 'Call the plant at six.'],
    ['a number', '12'],
    ['a site file', readFileSync('samples/l-patio.slabwright.json', 'utf8')],
    ['a later version', JSON.stringify({ ...whole, version: 2 })],
    ['ids that are not there', JSON.stringify({ ...whole, ids: ['b999', 7] })],
    ['a site that breaks a rule', JSON.stringify({ ...whole, site: { ...site, units: 'cubits' } })],
    ['no site', JSON.stringify({ ...whole, site: undefined })],
  ])('%s is refused', (_, text) => {
    expect(readCopy(text).ok).toBe(false)
  })
})
