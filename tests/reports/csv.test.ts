import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { derivePlan } from '../../core/plan/derivePlan'
import { writeCsv } from '../../core/reports/csv'
import { csvTables } from '../../core/reports/csvTables'
import { planSheetData } from '../../core/reports/planSheetData'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import { patio } from './patio'

describe('CSV', () => {
  it('doubles quotes inside quotes (RFC 4180 §2.7: "aaa","b""bb","ccc")', () => {
    expect(writeCsv(['f'], [['b"bb']])).toBe('f\r\n"b""bb"\r\n')
  })

  it('quotes commas and line breaks and ends every record with CRLF (RFC 4180 §2.1, §2.6)', () => {
    expect(writeCsv(['a', 'b'], [['x,y', 'p\r\nq']])).toBe('a,b\r\n"x,y","p\r\nq"\r\n')
  })

  it('does not let a name run as a formula in a spreadsheet; numbers stay numbers', () => {
    expect(writeCsv(['a', 'b'], [['=1+1', -3.5]])).toBe("a,b\r\n'=1+1,-3.5\r\n")
    for (const start of ['=', '+', '-', '@', '\t'])
      expect(parse(writeCsv(['a'], [[`${start}x`]]))[1]).toEqual([`'${start}x`])
  })

  it('reads back equal with another reader, whatever the text', () => {
    const rows = [
      ['plain', 'with "quotes"', 'line\nbreak', ' leading', '12′ 6½″', ''],
      ['a,b', ',,', '"', '""', 'ft²', 'x'],
    ]
    const header = ['1', '2', '3', '4', '5', '6']
    expect(parse(writeCsv(header, rows))).toEqual([header, ...rows])
  })

  it('has the same number of fields in every row of every table, values in the units of the header', () => {
    const tables = csvTables(patio)
    expect(tables.map(t => t.name)).toEqual(['quantities', 'pours', 'shade', 'borders'])
    for (const { text } of tables) expect(parse(text).length).toBeGreaterThan(1)
    const pours: Record<string, string>[] = parse(tables[1]!.text, { columns: true })
    // 28 ft × 20 ft, joints of 28 ft and 20 ft.
    expect(Number(pours[1]!['area (ft²)'])).toBeCloseTo(560, 5)
    expect(Number(pours[1]!['joint (ft)'])).toBeCloseTo(48, 5)
  })

  it('names what a formula is about as people do, never by an id; a bare number has no unit', () => {
    const plan = derivePlan(lPatioAccepted(), { date: '2026-07-21' })
    if (!plan.ok) throw new Error('no plan')
    const rows: Record<string, string>[] = parse(csvTables(planSheetData(plan.value))[0]!.text, { columns: true })
    expect(rows.length).toBeGreaterThan(40)
    for (const row of rows)
      expect(`${row.formula}; ${row.inputs}`).not.toMatch(/\b[a-z]+[1-9]\d*\b|proposed-|= [\d.]+ 1(;|$)/)
    const of = (end: string) => rows.find(({ id }) => id?.endsWith(end))!
    expect(of('-field-area').formula).toBe('net area − 12 in border')
    expect(of('-construction-joint-length').inputs).toBe('joint 1 = 28 ft; joint 2 = 20 ft')
    expect(of('n51-concrete-order').inputs).toContain('over-run = 0.05;')
    expect(of('n51-loads').inputs).toContain('one load = 1 load')
  })
})
