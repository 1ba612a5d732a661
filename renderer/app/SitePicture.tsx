import { useEffect, useRef } from 'react'
import { edgeBounds, joinBounds } from '../../core/geometry/bounds'
import { createMemo } from '../../core/plan/memo'
import type { Site } from '../../shared/document/site'
import { fitBox } from '../editor/camera/camera'
import { drawCasters } from '../editor/layers/drawCasters'
import { drawShade } from '../editor/layers/drawShade'
import { drawSlabEdges, drawSlabs } from '../editor/layers/drawSlabs'
import type { Pen } from '../editor/layers/pen'
import { deriveHour, deriveLive } from '../store/livePlan'
import { readInks } from '../theme/inks'

const hourMs = 3_600_000

function paint(canvas: HTMLCanvasElement, site: Site, date: string): void {
  const ratio = window.devicePixelRatio || 1
  const size = { width: canvas.clientWidth, height: canvas.clientHeight }
  const sheet = (onto: HTMLCanvasElement): CanvasRenderingContext2D => {
    onto.width = size.width * ratio
    onto.height = size.height * ratio
    const ctx = onto.getContext('2d')!
    ctx.setTransform(ratio, 0, 0, ratio, 0, 0)
    return ctx
  }
  const memo = createMemo()
  const live = deriveLive(site, date, memo)
  const { shade } = deriveHour(live, (live.day?.startMs ?? 0) + 14 * hourMs, memo)
  const box = joinBounds(live.slabs.flatMap(slab => slab.outline.map(edgeBounds)))
  const pen: Pen = { ctx: sheet(canvas), size, camera: fitBox(box, size, 26), inks: readInks(canvas) }
  const scene = { slabs: live.slabs, sources: site.slabs, finishes: site.finishes, inColor: true, textured: true }
  drawSlabs(pen, scene)
  drawSlabEdges(pen, scene)
  const shadows = document.createElement('canvas')
  drawShade({ ...pen, ctx: sheet(shadows) }, { shade, slabs: live.slabs, casters: site.casters, strength: 0.7 })
  pen.ctx.drawImage(shadows, 0, 0, size.width, size.height)
  drawCasters(pen, site.casters)
}

/** A small picture of a site in its own colors, with the shade of two in the afternoon; drawn when it comes into view. */
export function SitePicture({ site, date }: { readonly site: Site; readonly date: string }) {
  const ref = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const canvas = ref.current
    if (!canvas) return
    const observer = new IntersectionObserver(entries => {
      if (!entries.some(entry => entry.isIntersecting)) return
      observer.disconnect()
      paint(canvas, site, date)
    })
    observer.observe(canvas)
    return () => observer.disconnect()
  }, [site, date])
  return <canvas ref={ref} className="site-picture" data-theme="light" />
}
