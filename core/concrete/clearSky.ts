/** Sun on level ground under a clear sky: global, and its direct and diffuse parts. Angles are apparent (refracted). */

const radians = (degrees: number): number => (degrees * Math.PI) / 180

/** W/m² on a level plane, and the beam on a plane square to it. */
export interface Irradiance {
  readonly globalWm2: number
  readonly directNormalWm2: number
  readonly diffuseWm2: number
}

const night: Irradiance = { globalWm2: 0, directNormalWm2: 0, diffuseWm2: 0 }

/**
 * Global W/m² from the sun's altitude alone: 1098 cos Z exp(−0.059/cos Z); 0 at night. Source: B. Haurwitz, Journal of
 * Meteorology 2, 1945 and 3, 1946; the best of the altitude-only models in Reno, Hansen and Stein, SAND2012-2389, 2012.
 */
export function haurwitzGlobal(altitudeDeg: number): number {
  const cosZenith = Math.sin(radians(altitudeDeg))
  return cosZenith > 0 ? 1098 * cosZenith * Math.exp(-0.059 / cosZenith) : 0
}

/**
 * Relative optical air mass: F. Kasten and A. T. Young, Applied Optics 28, 1989. Altitude 0…90°; about 38 at the
 * horizon, infinite below it.
 */
export function relativeAirMass(altitudeDeg: number): number {
  if (altitudeDeg < 0) return Number.POSITIVE_INFINITY
  return 1 / (Math.sin(radians(altitudeDeg)) + 0.50572 * (altitudeDeg + 6.07995) ** -1.6364)
}

/** Share of sea-level pressure at an elevation: ISO 2533 standard atmosphere, up to 11 km. */
export const pressureShare = (elevationM: number): number => (1 - 2.25577e-5 * elevationM) ** 5.25588

/**
 * Sunlight above the air on a day of the year, W/m²: 1364 for the year's mean as in the clear-sky models here, ± 3.3 %
 * with the distance to the sun (J. A. Duffie and W. A. Beckman, Solar Engineering of Thermal Processes, 2013, eq. 1.4.1a).
 */
export const extraterrestrialWm2 = (dayOfYear: number): number =>
  1364 * (1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / 365))

export interface ClearSkyInput {
  readonly altitudeDeg: number
  readonly airMassAbsolute: number
  /** 2 very clean, 3.5 ordinary, 6 hazy. */
  readonly linkeTurbidity: number
  readonly elevationM: number
  readonly extraterrestrialWm2: number
}

/**
 * Ineichen–Perez clear sky: P. Ineichen and R. Perez, Solar Energy 73, 2002, with the limit on the beam given there;
 * written after the equations as documented in pvlib-python (clearsky.ineichen, without the enhancement of 1.8 power).
 * Night gives zeros.
 */
export function ineichenPerez(input: ClearSkyInput): Irradiance {
  const { airMassAbsolute, linkeTurbidity, elevationM } = input
  const cosZenith = Math.sin(radians(input.altitudeDeg))
  if (cosZenith <= 0 || !Number.isFinite(airMassAbsolute)) return night
  const heightShare8 = Math.exp(-elevationM / 8000)
  const heightShare1 = Math.exp(-elevationM / 1250)
  const scale = 5.09e-5 * elevationM + 0.868
  const fade = 3.92e-5 * elevationM + 0.0387
  const globalWm2 =
    scale *
    input.extraterrestrialWm2 *
    cosZenith *
    Math.exp(-fade * airMassAbsolute * (heightShare8 + heightShare1 * (linkeTurbidity - 1)))
  const beam =
    input.extraterrestrialWm2 *
    (0.664 + 0.163 / heightShare8) *
    Math.exp(-0.09 * airMassAbsolute * (linkeTurbidity - 1))
  const mostBeam =
    (globalWm2 * Math.max(0, 1 - (0.1 - 0.2 * Math.exp(-linkeTurbidity)) / (0.1 + 0.882 / heightShare8))) / cosZenith
  const directNormalWm2 = Math.min(beam, mostBeam)
  return { globalWm2, directNormalWm2, diffuseWm2: globalWm2 - directNormalWm2 * cosZenith }
}

export interface SolisInput {
  readonly altitudeDeg: number
  /** Aerosol optical depth at 700 nm, 0…0.45. */
  readonly aerosol700: number
  /** Water in the air column, 0.2…10 cm; less than 0.2 counts as 0.2, as its author does. */
  readonly waterCm: number
  readonly pressureShare: number
  readonly extraterrestrialWm2: number
}

/**
 * Simplified Solis: P. Ineichen, Solar Energy 82, 2008. A second clear sky of independent make, to check the first.
 * The three parts are fitted one by one, so global is not exactly direct plus diffuse.
 */
export function simplifiedSolis(input: SolisInput): Irradiance {
  const sinAltitude = Math.sin(radians(input.altitudeDeg))
  if (sinAltitude <= 0) return night
  const aerosol = input.aerosol700
  const water = Math.max(input.waterCm, 0.2)
  const lnWater = Math.log(water)
  const lnPressure = Math.log(input.pressureShare)
  const enhanced =
    input.extraterrestrialWm2 *
    (0.12 * water ** 0.56 * aerosol ** 2 +
      0.97 * water ** 0.032 * aerosol +
      1.08 * water ** 0.0051 +
      0.071 * lnPressure)
  const beamDepth =
    (1.82 + 0.056 * lnWater + 0.0071 * lnWater ** 2) * aerosol +
    (0.33 + 0.045 * lnWater + 0.0096 * lnWater ** 2) +
    (0.0089 * water + 0.13) * lnPressure
  const beamPower =
    (0.00925 * aerosol ** 2 + 0.0148 * aerosol - 0.0172) * lnWater +
    (-0.7565 * aerosol ** 2 + 0.5057 * aerosol + 0.4557)
  const globalDepth =
    (1.24 + 0.047 * lnWater + 0.0061 * lnWater ** 2) * aerosol +
    (0.27 + 0.043 * lnWater + 0.009 * lnWater ** 2) +
    (0.0079 * water + 0.1) * lnPressure
  const globalPower = -0.0147 * lnWater - 0.3079 * aerosol ** 2 + 0.2846 * aerosol + 0.3798
  const clean = aerosol < 0.05
  const diffuseDepth =
    (clean ? 86 * water - 13800 : -0.21 * water + 11.6) * aerosol ** 4 +
    (clean ? -3.11 * water + 79.4 : 0.27 * water - 20.7) * aerosol ** 3 +
    (clean ? -0.23 * water + 74.8 : -0.134 * water + 15.5) * aerosol ** 2 +
    (clean ? 0.092 * water - 8.86 : 0.0554 * water - 5.71) * aerosol +
    (clean ? 0.0042 * water + 3.12 : 0.0057 * water + 2.94) +
    (clean ? -0.83 * (1 + aerosol) ** -17.2 : -0.71 * (1 + aerosol) ** -15) * lnPressure
  const diffusePower = -0.337 * aerosol ** 2 + 0.63 * aerosol + 0.116 + lnPressure / (18 + 152 * aerosol)
  return {
    globalWm2: enhanced * Math.exp(-globalDepth / sinAltitude ** globalPower) * sinAltitude,
    directNormalWm2: enhanced * Math.exp(-beamDepth / sinAltitude ** beamPower),
    diffuseWm2: enhanced * Math.exp(-diffuseDepth / sinAltitude ** diffusePower),
  }
}
