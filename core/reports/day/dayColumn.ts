/** How the sheet of a day is set: lines one under the other, boxes to tick. */

import { drawRect, drawText, ink, num, rootFont, type TextStyle } from '../svgPen'
import { wrapText } from './wrapText'

export const letterPt = 14
export const lineStep = 17.5
/** Left, right and at the foot of a page. */
export const dayMargin = 34

/** Lines set one under the other; `y` moves down as it writes. */
export class Column {
  readonly parts: string[] = []
  constructor(
    readonly x: number,
    public y: number,
    readonly width: number,
    readonly sizePt = letterPt,
  ) {}

  text(text: string, style: Partial<TextStyle> = {}, indent = 0): void {
    const sizePt = style.sizePt ?? this.sizePt
    for (const line of wrapText(text, sizePt, this.width - indent, style.face)) {
      this.parts.push(drawText(line, this.x + indent, this.y, { ...style, sizePt }))
      this.y += sizePt * 1.22
    }
  }

  heading(text: string): void {
    this.y += 6
    this.parts.push(drawText(text, this.x, this.y, { sizePt: 17, face: 'name' }))
    this.y += 19
  }

  /** Left a word, right a figure. */
  row(label: string, value: string): void {
    const { sizePt } = this
    this.parts.push(drawText(label, this.x, this.y, { sizePt }))
    this.parts.push(drawText(value, this.x + this.width, this.y, { sizePt, face: 'planBold', anchor: 'end' }))
    this.y += sizePt * 1.25
  }

  box(text: string, stepPt = lineStep): void {
    this.parts.push(drawRect(this.x, this.y - 11, 12, 12, { stroke: ink, width: 1.2 }))
    this.text(text, {}, 18)
    this.y += stepPt - lineStep
  }
}

export const rowsOf = (lines: readonly string[]): number => Math.ceil(lines.length / 2)

/** Boxes to tick in two columns, `stepPt` from line to line. */
export function drawChecks(column: Column, lines: readonly string[], stepPt: number): void {
  const half = (column.width - 20) / 2
  const sides = [0, 1].map(side => new Column(column.x + side * (half + 20), column.y, half))
  lines.forEach((line, i) => {
    sides[i < rowsOf(lines) ? 0 : 1]!.box(line, stepPt)
  })
  column.parts.push(...sides.flatMap(({ parts }) => parts))
  column.y = Math.max(...sides.map(({ y }) => y))
}

export const svgPage = (parts: readonly string[], widthPt: number, heightPt: number): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${num(widthPt)}" height="${num(heightPt)}" viewBox="0 0 ${num(widthPt)} ${num(heightPt)}" ${rootFont}>${parts.join('')}</svg>`
