import { Site } from '../../shared/document/site'
import type { Finding } from '../../shared/problem'
import { checkSite } from './checkSite'
import { findExcess } from './findExcess'
import { findingsFromIssues } from './findingsFromIssues'
import { type SitePath, sitePaths } from './sitePaths'

/** Two corners enclose an area only between arcs. */
const fewestVertices = ({ path, mayBeOpen }: SitePath): number =>
  mayBeOpen || path.edges.some(edge => edge.riseM !== undefined && edge.riseM !== 0) ? 2 : 3

const checkPath = (sitePath: SitePath): readonly Finding[] => {
  const { path, field, mayBeOpen } = sitePath
  const [vertices, edges] = [path.vertices.length, path.edges.length]
  const stop = (code: Finding['code'], values: Finding['values']): readonly Finding[] => [
    { code, severity: 'stop', values, field, at: { entityId: path.id } },
  ]
  const least = fewestVertices(sitePath)
  if (vertices < least) return stop('pathTooShort', { vertices, least })
  if (edges === vertices || (mayBeOpen && edges === vertices - 1)) return []
  return stop('edgeCountMismatch', { vertices, edges })
}

/**
 * What every site must keep after every command: the schema, the limits, ids once each and below the counter, no id
 * that leads nowhere, real dates, rings closed. Empty when all is well. Crossing and fit are findings of the slab.
 */
export const invariants = (site: Site): readonly Finding[] => {
  const parsed = Site.safeParse(site)
  if (!parsed.success) return findingsFromIssues(parsed.error.issues, site)
  const excess = findExcess(site)
  return [...(excess === undefined ? [] : [excess]), ...checkSite(site), ...sitePaths(site).flatMap(checkPath)]
}
