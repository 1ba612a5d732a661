import * as z from 'zod/mini'
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

const checkSchema = (site: Site): readonly Finding[] => {
  const parsed = Site.safeParse(site)
  return parsed.success ? [] : findingsFromIssues(parsed.error.issues, site)
}

/** True where a branch keeps its schema; rows of a list that stood in it `before` are not read again. */
const keepsSchema = (schema: z.core.$ZodType, branch: unknown, before: unknown): boolean => {
  if (branch === before) return true
  if (!(schema instanceof z.ZodMiniArray && Array.isArray(branch) && Array.isArray(before)))
    return z.safeParse(schema, branch).success
  const kept = new Set<unknown>(before)
  return branch.every(row => kept.has(row) || z.safeParse(schema.def.element, row).success)
}

/** What the schema says against a site whose branches, where they are those of `before`, keep it. */
const checkBranches = (site: Site, before: Site): readonly Finding[] => {
  const keys = [...new Set([...Object.keys(site), ...Object.keys(before)])] as (keyof Site)[]
  const keepsAll = keys.every(
    key => site[key] === before[key] || (key in Site.shape && keepsSchema(Site.shape[key], site[key], before[key])),
  )
  return keepsAll ? [] : checkSchema(site)
}

/**
 * What every site must keep after every command: the schema, the limits, ids once each and below the counter, no id
 * that leads nowhere, real dates, rings closed. Empty when all is well. Crossing and fit are findings of the slab.
 * @param before a site that keeps them: branches shared with it are not read by the schema again
 */
export const invariants = (site: Site, before?: Site): readonly Finding[] => {
  const broken = before === undefined ? checkSchema(site) : checkBranches(site, before)
  return broken.length > 0 ? broken : [...checkLimits(site), ...checkSite(site), ...sitePaths(site).flatMap(checkPath)]
}

const checkLimits = (site: Site): readonly Finding[] => {
  const excess = findExcess(site)
  return excess === undefined ? [] : [excess]
}

/**
 * What an edit of a site that keeps them has broken, where it only moved things: it can break no id and no date, so
 * that the branches that changed and the limits are enough.
 */
export const movedInvariants = (site: Site, before: Site): readonly Finding[] => {
  const broken = checkBranches(site, before)
  return broken.length > 0 ? broken : checkLimits(site)
}
