/** What was chosen, as text for the clipboard: it can be pasted into another site, on another day, in another window. */
import type { Id } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { err, type Finding, ok, type Result } from '../../shared/problem'
import { chosenEntities } from './commands/siteEntities'
import { readSite } from './readSite'

const copyFormat = 'slabwright-copy'

export interface Copied {
  /** Holds what was chosen and what that needs, nothing else. */
  readonly site: Site
  readonly ids: readonly Id[]
}

/** The site with all but the chosen things, their slabs and finishes left out: no log, no prices, no pictures. */
function pruned(site: Site, ids: readonly Id[]): Site {
  const chosen = chosenEntities(site, ids)
  const kept = new Set<Id>(chosen.map(({ row }) => row.id))
  for (const entity of chosen) {
    if ('owner' in entity) kept.add(entity.owner.id)
    else if (entity.kind === 'point' || entity.kind === 'wish') kept.add(entity.row.slabId)
  }
  const only = <T extends { id: Id }>(rows: readonly T[]): T[] => rows.filter(({ id }) => kept.has(id))
  const { picture: _, ...place } = site.place
  const slabs = only(site.slabs)
  const isThere = ({ slabId }: { slabId: Id }): boolean => slabs.some(({ id }) => id === slabId)
  const { access } = site
  return {
    format: site.format,
    version: site.version,
    id: site.id,
    name: site.name,
    nextId: site.nextId,
    units: site.units,
    place,
    finishes: site.finishes,
    slabs,
    casters: only(site.casters),
    points: site.points.filter(isThere),
    wishes: site.wishes
      .filter(isThere)
      // Joints stay behind: a wish that ended on one ends in the open.
      .map(wish => {
        if (wish.kind !== 'required') return wish
        const [a, b] = wish.line.map(end =>
          end.anchor.on === 'joint' ? { ...end, anchor: { on: 'free' as const } } : end,
        )
        return { ...wish, line: [a!, b!] }
      }),
    accepted: [],
    ...(site.furnishings === undefined ? {} : { furnishings: only(site.furnishings) }),
    ...(site.notes === undefined ? {} : { notes: only(site.notes) }),
    ...(access === undefined
      ? {}
      : {
          access: {
            ...access,
            truckSpots: only(access.truckSpots),
            pumpSpots: only(access.pumpSpots),
            washouts: only(access.washouts),
            noGo: only(access.noGo),
            ways: only(access.ways),
          },
        }),
  }
}

export const writeCopy = (site: Site, ids: readonly Id[]): string =>
  JSON.stringify({ format: copyFormat, version: 1, ids, site: pruned(site, ids) })

const wrong: Finding = { code: 'nothingToPaste', severity: 'stop', values: {} }

/** Reads such a text through the same door as a file. Fails on any other text, and on ids that are not in it. */
export function readCopy(text: string): Result<Copied, readonly Finding[]> {
  let raw: unknown
  try {
    raw = JSON.parse(text)
  } catch {
    return err([wrong])
  }
  if (typeof raw !== 'object' || raw === null) return err([wrong])
  const { format, version, ids, site } = raw as Readonly<Record<string, unknown>>
  if (format !== copyFormat || version !== 1 || !Array.isArray(ids)) return err([wrong])
  const read = readSite(JSON.stringify(site ?? null))
  if (!read.ok) return read
  const known = chosenEntities(
    read.value,
    ids.filter(id => typeof id === 'string'),
  ).map(({ row }) => row.id)
  return known.length === 0 ? err([wrong]) : ok({ site: read.value, ids: known })
}
