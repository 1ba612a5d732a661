import { useEffect, useRef } from 'react'
import { edgeBounds, joinBounds } from '../../core/geometry/bounds'
import { createMemo } from '../../core/plan/memo'
import { siteDay } from '../../core/sun/siteDay'
import type { Site } from '../../shared/document/site'
import { fitBox } from '../editor/camera/camera'
import { drawCasters } from '../editor/layers/drawCasters'
import { drawShade } from '../editor/layers/drawShade'
import { drawSlabEdges, drawSlabs } from '../editor/layers/drawSlabs'
import type { Pen } from '../editor/layers/pen'
import { deriveLive } from '../store/livePlan'
import { readInks } from '../theme/inks'

const hourMs = 3_600_000

/** A small picture of a site in its own colors, with the shade of two in the afternoon. */
export function SitePicture({ site, date }: { readonly site: Site; readonly date: string }) {
  const ref = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const canvas = ref.current
    const ctx = canvas?.getContext('2d')
    if (!canvas || !ctx) return
    const ratio = window.devicePixelRatio || 1
    const size = { width: canvas.clientWidth, height: canvas.clientHeight }
    canvas.width = size.width * ratio
    canvas.height = size.height * ratio
    ctx.setTransform(ratio, 0, 0, ratio, 0, 0)
    const day = siteDay(date, site.place.zone)
    const live = deriveLive(site, date, (day.ok ? day.value.startMs : 0) + 14 * hourMs, createMemo())
    const box = joinBounds(live.slabs.flatMap(slab => slab.outline.map(edgeBounds)))
    const pen: Pen = { ctx, size, camera: fitBox(box, size, 26), inks: readInks(canvas) }
    ctx.clearRect(0, 0, size.width, size.height)
    const scene = { slabs: live.slabs, sources: site.slabs, finishes: site.finishes, inColor: true, textured: true }
    drawSlabs(pen, scene)
    drawSlabEdges(pen, scene)
    drawShade(pen, { shade: live.shade, slabs: live.slabs, casters: site.casters, strength: 0.7 })
    drawCasters(pen, site.casters)
  }, [site, date])
  return <canvas ref={ref} className="site-picture" data-theme="light" />
}
