import type { Site } from '../shared/document/site'
import { lPatio } from './sites/lPatio'

/** The sample sites by file name. */
export const sampleSites = (): Readonly<Record<string, Site>> => ({
  'l-patio': lPatio(),
})
