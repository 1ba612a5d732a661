/** How far apart contraction joints may lie. */

/**
 * Most feet between joints by slab thickness, with coarse aggregate of ¾ in or larger and slump of 3 to 5 in.
 * Source: C. Beall, Masonry and Concrete, McGraw-Hill, 2001, fig. 2-15, after the Portland Cement Association.
 */
export const spacingTable = [
  { thicknessIn: 4, spacingFt: 10 },
  { thicknessIn: 5, spacingFt: 13 },
  { thicknessIn: 6, spacingFt: 15 },
] as const

/** 24 to 36 times the thickness, at most 18 ft. Source: ACI 302.1R-96. */
const mostThicknesses = 30
const mostSpacingFt = 18

export const spacingSource =
  'C. Beall, Masonry and Concrete, 2001, fig. 2-15, after PCA; other thicknesses 30 × thickness, at most 18 ft: ACI 302.1R-96, 24 to 36 times'

const inM = 0.0254
const ftM = 0.3048
/** A thickness this close to a row's is that row (in). */
const sameIn = 0.05

/** Most distance between contraction joints (m) for a slab thickness (m, > 0). */
export function contractionSpacing(thicknessM: number): number {
  const thicknessIn = thicknessM / inM
  const row = spacingTable.find(each => Math.abs(each.thicknessIn - thicknessIn) <= sameIn)
  const spacingFt = row?.spacingFt ?? Math.min(mostSpacingFt, (mostThicknesses * thicknessIn) / 12)
  return spacingFt * ftM
}
