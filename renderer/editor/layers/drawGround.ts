import { toPlan } from '../camera/camera'
import type { Pen } from './pen'

/** Grid squares of a size that is round in the site's units and 30 to 150 px on the screen. */
const steps: Readonly<Record<'ftin' | 'metric', readonly number[]>> = {
  ftin: [1, 4, 16, 64, 256].map(feet => feet * 0.3048),
  metric: [0.25, 1, 5, 25, 100],
}

export function gridStepM(zoom: number, units: 'ftin' | 'metric'): number {
  return steps[units].find(step => step * zoom >= 30) ?? steps[units].at(-1)!
}

/** Drawing paper with its faint squares. */
export function drawGround(pen: Pen, units: 'ftin' | 'metric'): void {
  const { ctx, camera, size, inks } = pen
  ctx.fillStyle = inks.paper
  ctx.fillRect(0, 0, size.width, size.height)
  const step = gridStepM(camera.zoom, units)
  if (step * camera.zoom < 8) return
  const [x0, y0] = toPlan(camera, [0, size.height])
  const [x1, y1] = toPlan(camera, [size.width, 0])
  ctx.strokeStyle = inks.grid
  ctx.lineWidth = 1
  ctx.beginPath()
  for (let k = Math.ceil(x0 / step); k * step <= x1; k++) {
    const x = Math.round(camera.x + k * step * camera.zoom) + 0.5
    ctx.moveTo(x, 0)
    ctx.lineTo(x, size.height)
  }
  for (let k = Math.ceil(y0 / step); k * step <= y1; k++) {
    const y = Math.round(camera.y - k * step * camera.zoom) + 0.5
    ctx.moveTo(0, y)
    ctx.lineTo(size.width, y)
  }
  ctx.stroke()
}
