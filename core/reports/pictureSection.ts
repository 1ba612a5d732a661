import type { PageSize } from './paper'
import type { PdfSection } from './pdfSet'

/** A picture that fills its page. */
export const pictureSection = (
  { svg, widthPt, heightPt }: PageSize & { readonly svg: string },
  letterPt: number,
): PdfSection => ({
  widthPt,
  heightPt,
  margin: [0, 0, 0, 0],
  foot: false,
  letterPt,
  content: [{ svg, width: widthPt, height: heightPt }],
})
