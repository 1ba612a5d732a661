import AxeBuilder from '@axe-core/playwright'
import type { Page } from 'playwright'

/**
 * All rules at once in the page itself, which has no frames from elsewhere: without a second page for each check. Themes
 * differ in their colors alone, so that under the others than the light one only the rule of contrast is asked again.
 */
export const axeOn = (page: Page, theme = 'light'): AxeBuilder => {
  const axe = new AxeBuilder({ page }).setLegacyMode()
  return theme === 'light' ? axe : axe.withRules(['color-contrast'])
}
