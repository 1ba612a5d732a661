/** The true scales a sheet may have, and the choice of paper and scale. */
import type { UnitSystem } from '../../shared/document/site'
import { type Orientation, type Paper, papersOf } from './paper'

export interface DrawingScale {
  readonly name: string
  /** Length on the ground over length on paper. */
  readonly ratio: number
}

const perFoot = (name: string, inchesPerFoot: number): DrawingScale => ({
  name: `${name} in = 1 ft`,
  ratio: 12 / inchesPerFoot,
})
const feetPerInch = (feet: number): DrawingScale => ({ name: `1 in = ${feet} ft`, ratio: feet * 12 })
const metric = (ratio: number): DrawingScale => ({ name: `1:${ratio}`, ratio })

const feetScales: readonly DrawingScale[] = [
  perFoot('1/2', 1 / 2),
  perFoot('3/8', 3 / 8),
  perFoot('1/4', 1 / 4),
  perFoot('3/16', 3 / 16),
  perFoot('1/8', 1 / 8),
  perFoot('3/32', 3 / 32),
  feetPerInch(10),
  perFoot('1/16', 1 / 16),
  feetPerInch(20),
  feetPerInch(30),
  feetPerInch(40),
  feetPerInch(50),
  feetPerInch(60),
].sort((a, b) => a.ratio - b.ratio)

const metricScales: readonly DrawingScale[] = [50, 75, 100, 125, 150, 200, 250, 300, 400, 500].map(metric)

/** From the largest drawing to the smallest. */
export const scalesOf = (units: UnitSystem): readonly DrawingScale[] => (units === 'ftin' ? feetScales : metricScales)

/** 1 in = 25.4 mm = 72 pt, exact. */
const pointsPerMeter = 72 / 0.0254

export const scalePtPerM = (scale: DrawingScale): number => pointsPerMeter / scale.ratio

export interface WindowSize {
  readonly widthPt: number
  readonly heightPt: number
}

export interface ScaleWish {
  readonly units: UnitSystem
  readonly widthM: number
  readonly heightM: number
  /** Blank paper around the drawing, for dimensions, in points. */
  readonly marginPt: number
  /** A drawing smaller than this is not readable, in points per meter. */
  readonly readablePtPerM: number
  /** The part of a page left to the drawing. */
  readonly windowOf: (paper: Paper, orientation: Orientation) => WindowSize
  readonly papers?: readonly Paper[]
  readonly scale?: DrawingScale
  /** How much the windows of neighboring sheets share, in points. */
  readonly overlapPt: number
}

export interface ScaleChoice {
  readonly paper: Paper
  readonly orientation: Orientation
  readonly scale: DrawingScale
  readonly columns: number
  readonly rows: number
}

const orientations: readonly Orientation[] = ['landscape', 'portrait']

/** Windows needed to cover a length when neighbors share `overlapPt`. */
const windowsFor = (lengthPt: number, windowPt: number, overlapPt: number): number =>
  lengthPt <= windowPt + 1e-6 ? 1 : Math.ceil((lengthPt - overlapPt) / (windowPt - overlapPt) - 1e-9)

/**
 * The smallest paper on which the drawing and its margins fit at a readable scale, at the largest scale that fits
 * there. Where no paper does, the largest paper at the smallest readable scale, in several sheets with the fewest
 * windows. A wished scale is kept and the sheets follow from it.
 */
export function chooseScale(wish: ScaleWish): ScaleChoice {
  const papers = wish.papers ?? papersOf(wish.units)
  const scales = wish.scale === undefined ? scalesOf(wish.units) : [wish.scale]
  const sized = (scale: DrawingScale): WindowSize => ({
    widthPt: wish.widthM * scalePtPerM(scale) + 2 * wish.marginPt,
    heightPt: wish.heightM * scalePtPerM(scale) + 2 * wish.marginPt,
  })
  const readable = (scale: DrawingScale): boolean =>
    wish.scale !== undefined || scalePtPerM(scale) >= wish.readablePtPerM - 1e-9
  for (const paper of papers)
    for (const scale of scales.filter(readable))
      for (const orientation of orientations) {
        const window = wish.windowOf(paper, orientation)
        const size = sized(scale)
        if (size.widthPt <= window.widthPt + 1e-6 && size.heightPt <= window.heightPt + 1e-6)
          return { paper, orientation, scale, columns: 1, rows: 1 }
      }
  const paper = papers.at(-1)!
  const scale = scales.filter(readable).at(-1) ?? scales.at(-1)!
  const size = sized(scale)
  return orientations
    .map(orientation => {
      const window = wish.windowOf(paper, orientation)
      return {
        paper,
        orientation,
        scale,
        columns: windowsFor(size.widthPt, window.widthPt, wish.overlapPt),
        rows: windowsFor(size.heightPt, window.heightPt, wish.overlapPt),
      }
    })
    .reduce((best, next) => (next.columns * next.rows < best.columns * best.rows ? next : best))
}
