import AxeBuilder from '@axe-core/playwright'
import type { Page } from 'playwright'

/** All rules at once in the page itself, which has no frames from elsewhere: without a second page for each check. */
export const axeOn = (page: Page): AxeBuilder => new AxeBuilder({ page }).setLegacyMode()
