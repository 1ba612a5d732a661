/** Pictures of slabs and their pours: `npx tsx tests/pours/contactSheet.ts [any]` writes dist/pours/*.png. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { Resvg } from '@resvg/resvg-js'
import { proposePours } from '../../core/pours/proposePours'
import { cellPx, drawCell } from './drawPours'
import { benchSlabs } from './randomSlabs'
import { ft2M2 } from './shapes'

const columns = 4
const rows = 3

const directions = process.argv[2] === 'any' ? ('any' as const) : ('edges' as const)
const cells = benchSlabs().map(({ name, region }) =>
  drawCell(name, region, proposePours({ slabId: 's1', part: 'whole', region, capM2: 900 * ft2M2, directions })),
)
mkdirSync('dist/pours', { recursive: true })
for (let s = 0; s * rows * columns < cells.length; s++) {
  const body = cells
    .slice(s * rows * columns, (s + 1) * rows * columns)
    .map(
      (cell, i) =>
        `<g transform="translate(${(i % columns) * cellPx} ${Math.floor(i / columns) * cellPx})">${cell}</g>`,
    )
    .join('')
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${columns * cellPx}" height="${rows * cellPx}" font-family="DejaVu Sans, sans-serif"><rect width="100%" height="100%" fill="#f7f7f4"/>${body}</svg>`
  writeFileSync(
    `dist/pours/${directions}-${s + 1}.png`,
    new Resvg(svg, { font: { loadSystemFonts: true } }).render().asPng(),
  )
}
