/** Hours of direct sun in at most seven bands, the darkest first: ink falls with the hours, so it reads in gray too. */
import type { SunMap } from '../../core/plan/deriveScreen'

export const bandCount = 7

export interface SunBands {
  /** Band i lies between limits i − 1 and i, in hours; one band more than limits. */
  readonly limitsH: readonly number[]
  readonly names: readonly string[]
}

const half = (hours: number): string => {
  const whole = Math.floor(hours)
  if (hours === whole) return String(whole)
  return whole === 0 ? '½' : `${whole}½`
}

const stepsH = [0.5, 1, 1.5, 2, 3] as const

/** Bands over what the slab's cells have; an empty map has one band. */
export function chooseBands(maps: readonly SunMap[]): SunBands {
  let [least, most] = [Number.POSITIVE_INFINITY, 0]
  for (const { minutes, weights } of maps)
    for (let cell = 0; cell < minutes.length; cell++) {
      if (weights[cell]! <= 0) continue
      const hours = minutes[cell]! / 60
      if (hours < least) least = hours
      if (hours > most) most = hours
    }
  if (!(most > least)) return { limitsH: [], names: [most > 0 ? `about ${half(Math.round(most * 2) / 2)}` : noSun] }
  const step = stepsH.find(each => Math.floor(most / each) - Math.floor(least / each) < bandCount) ?? 3
  const first = (Math.floor(least / step) + 1) * step
  const limitsH: number[] = []
  for (let limit = first; limit < most - 1e-9 && limitsH.length < bandCount - 1; limit += step) limitsH.push(limit)
  if (limitsH.length === 0) return { limitsH, names: [`about ${half(Math.round(most * 2) / 2)}`] }
  return {
    limitsH,
    names: [
      `under ${half(limitsH[0]!)}`,
      ...limitsH.slice(1).map((limit, i) => `${half(limitsH[i]!)}–${half(limit)}`),
      `over ${half(limitsH.at(-1)!)}`,
    ],
  }
}

export function bandOf({ limitsH }: SunBands, hours: number): number {
  let band = 0
  while (band < limitsH.length && hours >= limitsH[band]!) band++
  return band
}

/** Area of slab in each band, m². */
export function bandAreas(maps: readonly SunMap[], bands: SunBands): number[] {
  const areas = bands.names.map(() => 0)
  for (const { grid, minutes, weights } of maps)
    for (let cell = 0; cell < minutes.length; cell++)
      if (weights[cell]! > 0) areas[bandOf(bands, minutes[cell]! / 60)]! += weights[cell]! * grid.cellM ** 2
  return areas
}

export const noSun = 'none'

/** Which of the seven inks a band takes: few bands are spread over the scale. The most sun is the palest, none the darkest. */
export const bandInk = ({ names }: SunBands, band: number): number =>
  names.length === 1
    ? names[0] === noSun
      ? 1
      : bandCount
    : 1 + Math.round((band * (bandCount - 1)) / (names.length - 1))
