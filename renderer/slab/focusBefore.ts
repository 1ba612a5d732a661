/** Gives the focus to what stands last before an element that is about to go, within its form. */
export function focusBefore(gone: Element | null): void {
  const near = [...(gone?.closest('.fields')?.querySelectorAll<HTMLElement>('input, select, button, summary') ?? [])]
  near
    .filter(each => (gone!.compareDocumentPosition(each) & Node.DOCUMENT_POSITION_PRECEDING) !== 0)
    .at(-1)
    ?.focus()
}
