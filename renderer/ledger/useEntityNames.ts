import { useRef } from 'react'
import { entityNames } from '../../core/reports/nameEntities'
import type { Site } from '../../shared/document/site'

const areSame = (a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): boolean =>
  a.size === b.size && [...a].every(([id, name]) => b.get(id) === name)

/** The same map as long as everything is called what it was: what is moved keeps its name. */
export function useEntityNames(site: Site): ReadonlyMap<string, string> {
  const last = useRef<{ readonly site: Site; readonly names: ReadonlyMap<string, string> }>(undefined)
  if (last.current?.site !== site) {
    const names = entityNames(site)
    last.current = { site, names: last.current && areSame(last.current.names, names) ? last.current.names : names }
  }
  return last.current.names
}
