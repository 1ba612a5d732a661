export type Align = 'left' | 'right'

/** Columns set to the width of their widest cell, two spaces apart; the first row is the head. */
export function textTable(rows: readonly (readonly string[])[], aligns: readonly Align[]): string {
  const widths = aligns.map((_, column) => Math.max(...rows.map(row => (row[column] ?? '').length)))
  const line = (row: readonly string[]) =>
    `  ${aligns
      .map((align, c) => (align === 'right' ? (row[c] ?? '').padStart(widths[c]!) : (row[c] ?? '').padEnd(widths[c]!)))
      .join('  ')}`.trimEnd()
  return rows.map(row => `${line(row)}\n`).join('')
}
