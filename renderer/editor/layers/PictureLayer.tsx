import type { Layer as LayerNode } from 'konva/lib/Layer'
import type { ReactNode } from 'react'
import { Layer } from 'react-konva/lib/ReactKonvaCore'

/** A layer that is only looked at. What is under the pointer is worked out from the site, so no hits are painted. */
export function PictureLayer({ children }: { readonly children: ReactNode }) {
  return (
    <Layer listening={false} ref={paintNoHits}>
      {children}
    </Layer>
  )
}

const paintNoHits = (layer: LayerNode | null): void => {
  if (layer) layer.drawHit = () => layer
}
