/** Least temperature of concrete as placed and kept: ACI 306R-16, table 5.1 (55 °F as quoted; the rest from memory). */
const inchM = 0.0254

const rows = [
  { underM: 12 * inchM, leastC: 115 / 9 },
  { underM: 36 * inchM, leastC: 10 },
  { underM: 72 * inchM, leastC: 65 / 9 },
  { underM: Number.POSITIVE_INFINITY, leastC: 40 / 9 },
] as const

export const leastPlacedC = (thicknessM: number): number => rows.find(row => thicknessM < row.underM)!.leastC
