/** Writes every sample site: `npx tsx samples/make.ts`. A test makes them again and compares the bytes. */
import { writeFileSync } from 'node:fs'
import { serializeSite } from '../core/document/serializeSite'
import { sampleSites } from './sampleSites'

for (const [name, site] of Object.entries(sampleSites()))
  writeFileSync(new URL(`${name}.slabwright.json`, import.meta.url), serializeSite(site))
