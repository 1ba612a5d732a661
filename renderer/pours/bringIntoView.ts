/** What is chosen on the plan is not looked for in the column; a hand in the column knows where it is. */
export function bringIntoView(element: HTMLElement | null): void {
  if (!document.activeElement?.closest('.led')) element?.scrollIntoView({ block: 'nearest' })
}
