import type { ResolvedSlab } from '../../core/geometry/resolvedSlab'
import type { SunMap } from '../../core/plan/deriveScreen'
import { inPlan, type Pen } from '../editor/layers/pen'
import { regionsPath } from '../editor/layers/ringPath'
import type { Inks } from '../theme/inks'
import { bandInk, bandOf, type SunBands } from './sunBands'

/** Pixels of the picture per cell side: hours are read between cell centers, so that bands end in curves, not stairs. */
const fine = 4

const pictures = new WeakMap<SunMap, { readonly key: string; readonly canvas: HTMLCanvasElement }>()

const channels = (color: string): readonly [number, number, number] => {
  const hex = Number.parseInt(color.slice(1), 16)
  return [(hex >> 16) & 255, (hex >> 8) & 255, hex & 255]
}

function picture(map: SunMap, bands: SunBands, inks: Inks): HTMLCanvasElement {
  const colors = bands.names.map((_, band) => inks[`sh-${bandInk(bands, band)}` as keyof Inks] as string)
  const key = `${colors.join()} ${bands.limitsH.join()}`
  const made = pictures.get(map)
  if (made?.key === key) return made.canvas
  const { columns, rows } = map.grid
  const canvas = document.createElement('canvas')
  const [width, height] = [columns * fine, rows * fine]
  canvas.width = width
  canvas.height = height
  const ctx = canvas.getContext('2d')!
  const image = ctx.createImageData(width, height)
  const rgb = colors.map(channels)
  const { minutes } = map
  const clampCell = (at: number, most: number) => Math.max(0, Math.min(most - 1, at))
  for (let y = 0; y < height; y++) {
    // Canvas rows run down, the grid's up.
    const v = (height - 1 - y + 0.5) / fine - 0.5
    const r0 = clampCell(Math.floor(v), rows)
    const r1 = clampCell(Math.floor(v) + 1, rows)
    const fv = v - Math.floor(v)
    for (let x = 0; x < width; x++) {
      const u = (x + 0.5) / fine - 0.5
      const c0 = clampCell(Math.floor(u), columns)
      const c1 = clampCell(Math.floor(u) + 1, columns)
      const fu = u - Math.floor(u)
      const low = minutes[r0 * columns + c0]! * (1 - fu) + minutes[r0 * columns + c1]! * fu
      const high = minutes[r1 * columns + c0]! * (1 - fu) + minutes[r1 * columns + c1]! * fu
      const [red, green, blue] = rgb[bandOf(bands, (low * (1 - fv) + high * fv) / 60)]!
      const at = 4 * (y * width + x)
      image.data[at] = red
      image.data[at + 1] = green
      image.data[at + 2] = blue
      image.data[at + 3] = 255
    }
  }
  ctx.putImageData(image, 0, 0)
  pictures.set(map, { key, canvas })
  return canvas
}

/** Hours of direct sun in bands, inside the slabs' edges. */
export function drawSunMap(pen: Pen, maps: readonly SunMap[], bands: SunBands, slabs: readonly ResolvedSlab[]): void {
  const { ctx, inks } = pen
  inPlan(pen, () => {
    for (const map of maps) {
      const slab = slabs.find(each => each.id === map.slabId)
      if (!slab) continue
      const { minX, minY, cellM, columns, rows } = map.grid
      ctx.save()
      ctx.clip(regionsPath(slab.net), 'evenodd')
      ctx.translate(minX, minY + rows * cellM)
      ctx.scale(1, -1)
      ctx.drawImage(picture(map, bands, inks), 0, 0, columns * cellM, rows * cellM)
      ctx.restore()
    }
  })
}
