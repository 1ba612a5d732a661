import { writeFileSync } from 'node:fs'
import { arch, cpus, platform } from 'node:os'
import type { Bench, BenchRow } from './row'

const split = process.argv.indexOf('--')
const names = process.argv.slice(2, split < 0 ? undefined : split)
const wanted = split < 0 ? [] : process.argv.slice(split + 1)
const machine = `${cpus().length} × ${cpus()[0]?.model.trim() ?? 'unknown'}, ${platform()} ${arch()}, Node ${process.versions.node}`

const rows: (BenchRow & { machine: string })[] = []
for (const name of names) {
  if (wanted.length > 0 && !wanted.some(part => name.includes(part))) continue
  const { bench } = (await import(new URL(`./${name}.mjs`, import.meta.url).href)) as { bench: Bench }
  const found = await bench()
  if (found.length === 0) throw new Error(`${name} measured nothing`)
  for (const row of found) {
    rows.push({ ...row, machine })
    console.log(printRow(row))
  }
}

function printRow({ id, what, value, unit, peer, target, ok }: BenchRow): string {
  const verdict = ok === null ? '    ' : ok ? 'ok  ' : 'FAIL'
  const aim = target === null ? '' : `  target ${target}`
  return `${verdict} ${id.padEnd(28)} ${printValue(value).padStart(12)} ${unit.padEnd(8)} ${what}${peer === null ? '' : ` (against ${peer})`}${aim}`
}

function printValue(value: number): string {
  const size = Math.abs(value)
  return size !== 0 && (size < 0.001 || size >= 1e7) ? value.toExponential(2) : String(Number(value.toPrecision(4)))
}

const failed = rows.filter(({ ok }) => ok === false)
console.log(`\n${machine}\n${rows.length} rows, ${failed.length} below target`)
if (rows.length === 0) console.error('Nothing was measured.')
// A part of the benches says nothing about the rest: the record is of whole runs only.
if (wanted.length === 0 && rows.length > 0) {
  writeFileSync('tests/bench/results.json', `${JSON.stringify(rows, null, 2)}\n`)
}
process.exitCode = failed.length > 0 || rows.length === 0 ? 1 : 0
