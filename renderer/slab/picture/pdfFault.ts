/** Why a PDF gave no picture, as a sentence; `fault` is what reading it threw. */
export function pdfFault(fileName: string, fault: unknown): string {
  const name = fault instanceof Error ? fault.name : ''
  if (name === 'PasswordException')
    return `“${fileName}” opens only with a password. Save it without one, or save the page as a PNG, and take that.`
  if (name === 'InvalidPDFException')
    return `“${fileName}” is damaged, or no PDF. Save or download it again, or save the page as a PNG, and take that.`
  return `“${fileName}” could not be drawn. Save the page as a PNG or JPEG, and take that.`
}
