import { useMemo } from 'react'
import { findEdge } from '../../../core/document/commands/findPath'
import { edgeFromRise } from '../../../core/geometry/resolvePath'
import type { Site } from '../../../shared/document/site'
import type { InHand } from '../layers/drawInHand'
import { useEditorState } from '../useEditor'

/**
 * What the hand is at, to be drawn over the plan; null where nothing is drawn. The same object while nothing of it has
 * changed: what the worker sends must not draw the handles again.
 */
export function useInHand(site: Site, isDrawing: boolean): InHand | null {
  const { drawing, aim, edgeIds, traced, shapes } = useEditorState(({ drawing, aim, edges, traced, action }) => ({
    ...{ drawing, aim, edgeIds: edges, traced },
    shapes: action === 'select' && !drawing,
  }))
  const edges = useMemo(
    () =>
      edgeIds.flatMap(id => {
        const found = findEdge(site, id)
        if (!found) return []
        const { path, index } = found
        const to = path.vertices[(index + 1) % path.vertices.length]!
        return [edgeFromRise(id, path.vertices[index]!.at, to.at, path.edges[index]!.riseM)]
      }),
    [edgeIds, site],
  )
  return useMemo(
    () => (isDrawing ? { drawing, shapes, aim, edges, traced } : null),
    [isDrawing, drawing, shapes, aim, edges, traced],
  )
}
