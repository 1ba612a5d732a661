import { describe, expect, it } from 'vitest'
import { pdfFault } from '../../renderer/slab/picture/pdfFault'
import { pdfPageScale } from '../../renderer/slab/picture/pdfPageScale'
import { limits } from '../../shared/limits'

const named = (name: string) => Object.assign(new Error('of the reader'), { name })

describe('a page of a PDF as a picture', () => {
  // Sheet sizes at 72 points to the inch (ISO 32000-2, 8.3.2.3): letter 8.5 × 11 in, 36 × 24 in.
  it.each([
    [612, 792],
    [2592, 1728],
    [14_400, 3],
    [3, 3],
  ])('is as long as a picture may be, whatever the sheet: %d × %d pt', (width, height) => {
    const scale = pdfPageScale(width, height)
    expect(Math.max(width, height) * scale).toBeCloseTo(limits.assetPixels, 9)
    expect(Math.min(width, height) * scale).toBeLessThanOrEqual(limits.assetPixels + 1e-9)
  })

  it('says what is wrong with a locked, a damaged and an undrawable file, and what to do', () => {
    expect(pdfFault('plot.pdf', named('PasswordException'))).toMatch(/^“plot\.pdf” opens only with a password\. Save/)
    expect(pdfFault('plot.pdf', named('InvalidPDFException'))).toMatch(/^“plot\.pdf” is damaged, or no PDF\. Save/)
    for (const fault of [named('UnknownErrorException'), 'text', undefined])
      expect(pdfFault('plot.pdf', fault)).toBe(
        '“plot.pdf” could not be drawn. Save the page as a PNG or JPEG, and take that.',
      )
  })
})
