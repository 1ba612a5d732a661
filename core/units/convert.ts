/**
 * Exact conversions between customary and SI units.
 *
 * Source: A. Thompson and B. N. Taylor, NIST Special Publication 811, 2008 edition, appendix B.8 (international foot,
 * exact factors set in bold there). Whole-number ratios are used for lengths so that a result is the double nearest
 * to the exact value: 12.5 ft and 150 in both give 3.81 m.
 */

/** 1 in = 25.4 mm exactly = 127/5000 m. */
export const inchesToMeters = (inches: number): number => (inches * 127) / 5000
export const metersToInches = (lengthM: number): number => (lengthM * 5000) / 127

/** 1 ft = 0.3048 m exactly = 381/1250 m. */
export const feetToMeters = (feet: number): number => (feet * 381) / 1250
export const metersToFeet = (lengthM: number): number => (lengthM * 1250) / 381

/** 1 ft² = 0.3048² m². */
const squareFootM2 = 0.09290304
export const squareFeetToM2 = (squareFeet: number): number => squareFeet * squareFootM2
export const m2ToSquareFeet = (areaM2: number): number => areaM2 / squareFootM2

/** 1 yd³ = 0.9144³ m³. */
const cubicYardM3 = 0.764554857984
export const cubicYardsToM3 = (cubicYards: number): number => cubicYards * cubicYardM3
export const m3ToCubicYards = (volumeM3: number): number => volumeM3 / cubicYardM3

/** 1 lb (avoirdupois) = 0.45359237 kg. */
const poundKg = 0.45359237
export const poundsToKg = (pounds: number): number => pounds * poundKg
export const kgToPounds = (massKg: number): number => massKg / poundKg
