/** The README tells what the program takes and prints. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { usage } from '../../electron/cli/usage'
import { PlanJson } from '../../shared/planJson'

const readme = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8')
const told = new Set([...readme.matchAll(/`(\w+)(?:\[\])?`/g)].map(([, name]) => name))

describe('the README', () => {
  it('tells every key of the printed object', () => {
    expect(Object.keys(PlanJson.shape).filter(key => !told.has(key))).toEqual([])
  })

  it('tells every option of the command line', () => {
    const options = new Set(usage.match(/--\w+/g))
    expect(options.size).toBeGreaterThan(5)
    expect([...options].filter(option => !readme.includes(`\`${option}`))).toEqual([])
  })
})
