import type { UnitSystem } from '../../shared/document/site'
import { type DrawingScale, scalePtPerM } from './drawingScale'
import { drawPath, drawText, ink, num } from './svgPen'

const footM = 0.3048

export interface ScaleBar {
  readonly lengthM: number
  readonly lengthPt: number
  readonly unitText: 'ft' | 'm'
  readonly lengthText: number
}

/** The bar is 10 ft (or 5 m) wherever it fits the paper, else the nearest round length that does. */
export function chooseScaleBar(units: UnitSystem, scale: DrawingScale, longestPt: number): ScaleBar {
  const unitM = units === 'ftin' ? footM : 1
  const lengths = units === 'ftin' ? [10, 20, 30, 40, 50, 60, 100, 200, 8, 5, 4, 2] : [5, 10, 20, 50, 100, 4, 2, 1]
  const sized = lengths.map(length => ({ length, pt: length * unitM * scalePtPerM(scale) }))
  const fits = sized.filter(({ pt }) => pt >= 70 && pt <= longestPt)
  // A length that a rule shows is easier to check: whole sixteenths of an inch, whole millimeters.
  const onRule = ({ pt }: { pt: number }): boolean => {
    const marks = units === 'ftin' ? (pt / 72) * 16 : (pt / 72) * 25.4
    return Math.abs(marks - Math.round(marks)) < 1e-6
  }
  const pick = fits.find(onRule) ?? fits[0] ?? sized.at(-1)!
  return {
    lengthM: pick.length * unitM,
    lengthPt: pick.pt,
    unitText: units === 'ftin' ? 'ft' : 'm',
    lengthText: pick.length,
  }
}

/** Four fields, ink and paper in turn; the outer edge is the bar's true length. */
export function drawScaleBar(bar: ScaleBar, x: number, y: number, sizePt: number): string {
  const height = 6
  const quarter = bar.lengthPt / 4
  const fields = [0, 2]
    .map(i => `M${num(x + i * quarter)} ${num(y)}h${num(quarter)}v${height}h${num(-quarter)}Z`)
    .join('')
  const labels = [0, 1, 2].map(i => {
    const value = String((bar.lengthText * i) / 2)
    return drawText(i === 2 ? `${value} ${bar.unitText}` : value, x + i * 2 * quarter, y - 4, {
      sizePt,
      face: 'planBold',
      anchor: 'middle',
    })
  })
  return (
    drawPath(fields, { fill: ink }) +
    `<path id="scale-bar" d="M${num(x)} ${num(y)}L${num(x + bar.lengthPt)} ${num(y)}L${num(x + bar.lengthPt)} ${num(y + height)}L${num(x)} ${num(y + height)}Z" fill="none" stroke="${ink}" stroke-width="1"/>` +
    labels.join('')
  )
}

/** `At 100 % the bar is 1.25 in long.` */
export const barCheck = (bar: ScaleBar, units: UnitSystem): string => {
  const value = units === 'ftin' ? bar.lengthPt / 72 : (bar.lengthPt / 72) * 25.4
  const text = value.toFixed(units === 'ftin' ? 3 : 1).replace(/\.?0+$/, '')
  return `The bar is then ${text} ${units === 'ftin' ? 'in' : 'mm'} long.`
}
