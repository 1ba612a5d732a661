const first = '.chosen-form :is(input, select, button, summary)'

/** The keys go to the form of what is chosen, where there is one. */
export function goToForm(): boolean {
  const field = document.querySelector<HTMLElement>(first)
  field?.focus()
  return field !== null
}
