import { useMemo } from 'react'
import { siteEntities } from '../../core/document/commands/siteEntities'
import type { Path } from '../../shared/document/path'
import type { Site } from '../../shared/document/site'
import { useView } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import { nameOf } from './caughtWords'
import { outlineOf } from './layers/drawCasters'
import type { DimensionedRing } from './layers/placeLine'
import { chosenPaths, chosenWalls, pathOf } from './pickPart'

const nameOfPath = (site: Site, path: Path): string => {
  const owner = siteEntities(site).find(entity => pathOf(entity) === path)
  if (!owner) return 'what is chosen'
  return nameOf(site, [owner.row.id])
}

/** What carries dimensions: outlines always, and while it is drawn on the other shapes that are chosen. */
export function useDimensioned({ site, slabs }: LivePlan, isDrawing: boolean): readonly DimensionedRing[] {
  const selection = useView(state => state.selection)
  return useMemo(() => {
    const others = chosenPaths(site, isDrawing ? selection : []).filter(
      path => !site.slabs.some(({ outline }) => outline === path),
    )
    return [
      ...slabs.map(({ outline: ring, name }) => ({ ring, name })),
      ...others.map(path => ({ ring: outlineOf(path), name: nameOfPath(site, path) })),
      ...(isDrawing ? chosenWalls(site, selection) : []),
    ]
  }, [slabs, site, isDrawing, selection])
}
