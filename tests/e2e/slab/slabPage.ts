/** What journeys on the Slab stage share: an empty sheet, its points on the screen, the figures of the ledger. */
import { expect, type Page } from 'playwright/test'

export async function newSite(page: Page, address: string): Promise<void> {
  await page.goto(address)
  await page.getByRole('button', { name: 'New site', exact: true }).click()
  await expect(page.getByText(/Type a length or (click|tap) the first corner\./)).toBeVisible()
}

/** What the ledger says beside a name. */
export const figure = (page: Page, name: string) =>
  page.locator('.row', { has: page.getByRole('button', { name: `How ${name} is computed` }) }).locator('.v')

/** Where a point of the plan lies in the window, feet from the origin, as long as the empty sheet stands as it was opened:
 * 20 m about the origin in the middle, the drawing actions over the left 82 px. */
export async function sheetPoints(page: Page) {
  const box = (await page.getByRole('application').boundingBox())!
  const margin = Math.min(110, box.height * 0.16, (box.width - 82) * 0.17)
  const zoom = Math.min(box.width - 82 - 2 * margin, box.height - 2 * margin) / 20
  const [cx, cy] = [box.x + (box.width + 82) / 2, box.y + box.height / 2]
  return {
    zoom,
    at: (xFt: number, yFt: number) => [cx + xFt * 0.3048 * zoom, cy - yFt * 0.3048 * zoom] as const,
  }
}
