import { readFileSync } from 'node:fs'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import type { Site } from '../../shared/document/site'

/** The L patio as a site. */
export function patio(): Site {
  const site = readSite(readFileSync('samples/l-patio.slabwright.json', 'utf8'))
  if (!site.ok) throw new Error('the sample cannot be read')
  return site.value
}

/** The text of a site of about 3 MB, a picture under the plan included; `generation` stands in its name. */
export function bigSiteText(generation: number): string {
  const filler = 'QUJD'.repeat(3 * 2 ** 18)
  const site: Site = {
    ...patio(),
    name: `Generation ${generation}`,
    settings: { capM2: 50 + generation / 1000 },
  }
  // The filler is written where pictures go, without being one: the text is what is saved, not what is opened.
  return serializeSite(site).replace(/\n\}\n$/, `,\n  "assets": { "filler": "${filler}${generation}" }\n}\n`)
}
