import AxeBuilder from '@axe-core/playwright'
import type { Page } from 'playwright'

const themes = ['light', 'dark', 'sunlight'] as const

/**
 * All rules at once in the page itself, which has no frames from elsewhere: without a second page for each check. Themes
 * differ in their colors alone, so that under the others than the light one only the rule of contrast is asked again.
 */
export const axeOn = (page: Page, theme = 'light'): AxeBuilder => {
  const axe = new AxeBuilder({ page }).setLegacyMode()
  return theme === 'light' ? axe : axe.withRules(['color-contrast'])
}

/**
 * What the check finds on the page as it stands, or on a part of it (a selector): every rule once, contrast under each
 * theme. The colors of a theme hang on one attribute, set for the check and put back; for pages without motion.
 */
export async function faultsInEveryTheme(page: Page, state: string, within?: string): Promise<string[]> {
  const root = page.locator('html')
  const chosen = await root.getAttribute('data-theme')
  const wear = (theme: string | null) =>
    root.evaluate((element, worn) => element.setAttribute('data-theme', worn), theme ?? 'light')
  const faults: string[] = []
  for (const theme of themes) {
    await wear(theme)
    const axe = axeOn(page, theme)
    const { violations } = await (within === undefined ? axe : axe.include(within)).analyze()
    faults.push(...violations.map(({ id, nodes }) => `${state}, ${theme}: ${id} ${nodes[0]?.html}`))
  }
  await wear(chosen)
  return faults
}
