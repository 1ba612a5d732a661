/** Gives the keys to the plan, else to the name of the site, where what had the focus is about to go. */
export const focusPlan = (): void => {
  const place = document.querySelector<HTMLElement>('.sheet') ?? document.querySelector<HTMLElement>('.job-name')
  place?.focus()
}
