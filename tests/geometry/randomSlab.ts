import type { OpenPath, Path } from '../../shared/document/path'
import type { Pt } from '../../shared/document/primitives'
import type { Band, Border, Inset, Opening, Slab } from '../../shared/document/slab'
import {
  circlePath,
  drawBand,
  drawBorder,
  drawInset,
  drawLine,
  drawOpening,
  drawPath,
  drawSlab,
  rectangle,
  turned,
} from './drawSlab'
import { mulberry32 } from './mulberry32'

/**
 * A slab of 3 to 10 corners with arcs, dents and roundings, an opening (sometimes across the edge), stacked borders on
 * some or all edges, bent, arched or round bands and insets that reach beyond the slab: the parts overlap at random.
 */
export function randomSlab(seed: number): Slab {
  const r = mulberry32(seed)
  const corners = 3 + Math.floor(r() * 8)
  const onGrid = r() < 0.3
  const rises: Record<number, number> = {}
  const rounds: Record<number, number> = {}
  const points: Pt[] = Array.from({ length: corners }, (_, i) => {
    const angle = ((i + 0.8 * r()) / corners) * 2 * Math.PI
    const reach = 3 + r() * 5
    if (r() < 0.3) rises[i] = (r() - 0.4) * 2
    if (r() < 0.3) rounds[i] = 0.2 + r() * 1.5
    const [x, y] = [reach * Math.cos(angle), reach * Math.sin(angle)]
    return onGrid ? [Math.round(x * 2) / 2, Math.round(y * 2) / 2] : [x, y]
  })
  const outline = drawPath(1, points, { rises, rounds })
  let key = 2
  const near = (): Pt => [(r() - 0.5) * 5, (r() - 0.5) * 5]
  const openings: Opening[] = []
  if (r() < 0.6) {
    const round = r() < 0.5
    const shape = round
      ? circlePath(key++, near(), 0.3 + r())
      : drawPath(key++, rectangle(r() - 1, r() - 1, 0.5 + r(), 0.5 + r()), { rounds: { 0: 0.1, 2: 0.2 } })
    openings.push(drawOpening('o1', turned(shape)))
  }
  const borders: Border[] = []
  for (let i = Math.floor(r() * 3); i > 0; i--) {
    const some = outline.edges.filter(() => r() < 0.5).map(e => e.id)
    borders.push(drawBorder(`b${i}`, outline, 0.1 + r() * 0.6, some.length === 0 || r() < 0.4 ? 'all' : some))
  }
  const opening = openings[0]
  if (opening && r() < 0.6) borders.push(drawBorder('b9', opening.path, 0.1 + r() * 0.5))
  const bands: Band[] = []
  for (let i = Math.floor(r() * 3); i > 0; i--) {
    const line =
      r() < 0.7
        ? drawLine(key++, [near(), near(), near()], r() < 0.5 ? { rises: { 0: r() - 0.5 } } : {})
        : circlePath(key++, near(), 0.5 + r() * 2)
    bands.push(drawBand(`n${i}`, line, 0.1 + r() * 0.5))
  }
  const insets: Inset[] = []
  if (r() < 0.5)
    insets.push(
      drawInset(
        'i1',
        r() < 0.5 ? circlePath(key++, near(), 0.3 + r()) : drawPath(key++, rectangle(r() * 3 - 2, r() * 3 - 2, 1, 1.5)),
      ),
    )
  return drawSlab(outline, { openings, borders, bands, insets })
}

/** Every path of a slab put through one change. */
export function mapPaths(slab: Slab, closed: (path: Path) => Path, open: (path: OpenPath) => OpenPath = closed): Slab {
  return {
    ...slab,
    outline: closed(slab.outline),
    openings: slab.openings.map(o => ({ ...o, path: closed(o.path) })),
    insets: slab.insets.map(i => ({ ...i, path: closed(i.path) })),
    bands: slab.bands.map(b => ({
      ...b,
      line: b.line.edges.length === b.line.vertices.length ? closed(b.line) : open(b.line),
    })),
  }
}
