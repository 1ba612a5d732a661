import { pointBounds } from '../../../core/geometry/bounds'
import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import type { Measures } from '../../../core/units/measures'
import type { Caster } from '../../../shared/document/caster'
import type { Pt } from '../../../shared/document/primitives'
import type { Slab } from '../../../shared/document/slab'
import { toScreen } from '../camera/camera'
import { outlineOf } from './drawCasters'
import { labelPoint } from './drawPours'
import { letter } from './lettering'
import type { Pen } from './pen'

const middleOf = (points: readonly Pt[]): Pt => {
  const box = pointBounds(points)
  return [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
}

/** Names of casters with their heights above their own base. */
export function drawCasterNames(pen: Pen, casters: readonly Caster[], print: Measures): void {
  for (const caster of casters) {
    switch (caster.kind) {
      case 'building': {
        const [x, y] = middleOf(outlineOf(caster.footprint).map(edge => edge.from))
        nameAt(pen, toScreen(pen.camera, [x, y]), caster.name, `eave ${print.length(caster.eaveM - caster.baseM)}`)
        break
      }
      case 'tree': {
        const [x, y] = toScreen(pen.camera, [caster.at[0], caster.at[1] - caster.crownRadiusM])
        nameAt(pen, [x, y + 16], caster.name, `${print.length(caster.topM - caster.baseM)} high`)
        break
      }
      case 'cover': {
        const [x, y] = middleOf(outlineOf(caster.outline).map(edge => edge.from))
        nameAt(pen, toScreen(pen.camera, [x, y]), caster.name, '')
        break
      }
      case 'wall': {
        const last = caster.line.at(-1)!
        const [x, y] = toScreen(pen.camera, last)
        nameAt(pen, [x, y - 30], caster.name, `${print.length(caster.topM - caster.baseM)} high`)
      }
    }
  }
}

function nameAt(pen: Pen, [x, y]: Pt, name: string, detail: string): void {
  letter(pen, name, [x, y], { sizePx: 14, weight: 700 })
  if (detail)
    letter(pen, detail, [x, y + 16 * pen.inks.letterScale], { sizePx: 13, weight: 500, ink: pen.inks['ink-2'] })
}

/** The slab's area in large letters where it has most room. */
export function drawSlabNames(
  pen: Pen,
  slabs: readonly ResolvedSlab[],
  sources: readonly Slab[],
  print: Measures,
): void {
  for (const slab of slabs) {
    const region = slab.net[0]
    if (!region || Math.sqrt(slab.netAreaM2) * pen.camera.zoom < 110) continue
    const [x, y] = toScreen(pen.camera, labelPoint(region))
    const source = sources.find(each => each.id === slab.id)
    letter(pen, print.area(slab.netAreaM2), [x, y], { sizePx: 34, weight: 700, face: 'slab', ground: pen.inks.slab })
    letter(pen, source?.name ?? '', [x, y + 28 * pen.inks.letterScale], {
      sizePx: 14,
      weight: 600,
      ground: pen.inks.slab,
    })
  }
}
