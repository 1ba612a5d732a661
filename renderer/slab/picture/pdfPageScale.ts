import { limits } from '../../../shared/limits'

/** Pixels per point (1/72 in) that make the longer side of a page as long as a picture may be. Sizes in points, > 0. */
export const pdfPageScale = (widthPt: number, heightPt: number): number =>
  limits.assetPixels / Math.max(widthPt, heightPt)
