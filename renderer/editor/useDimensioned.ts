import { useMemo } from 'react'
import { useView } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import { outlineOf } from './layers/drawCasters'
import type { DimensionedRing } from './layers/placeDimension'
import { chosenPaths, chosenWalls } from './pickPart'

/** What carries dimensions: outlines always, and while it is drawn on the other shapes that are chosen. */
export function useDimensioned({ site, slabs }: LivePlan, isDrawing: boolean): readonly DimensionedRing[] {
  const selection = useView(state => state.selection)
  return useMemo(() => {
    const others = chosenPaths(site, isDrawing ? selection : []).filter(
      path => !site.slabs.some(({ outline }) => outline === path),
    )
    return [
      ...slabs.map(({ outline: ring, name }) => ({ ring, name })),
      ...others.map(path => ({ ring: outlineOf(path), name: 'what is chosen' })),
      ...(isDrawing ? chosenWalls(site, selection) : []),
    ]
  }, [slabs, site, isDrawing, selection])
}
