/** Gives the keys to the plan, where what had the focus is about to go. */
export const focusPlan = (): void => document.querySelector<HTMLElement>('.sheet')?.focus()
