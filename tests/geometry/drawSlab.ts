/** Short ways to write slabs for the tests. */
import type { OpenPath, Path } from '../../shared/document/path'
import type { Pt } from '../../shared/document/primitives'
import type { Band, Border, Inset, Opening, Slab } from '../../shared/document/slab'

export interface Drawn {
  readonly rises?: Readonly<Record<number, number>>
  readonly rounds?: Readonly<Record<number, number>>
}

/** A closed path; ids are `${key}…`: vertices `v<key><i>`, edges `e<key><i>` with key a digit string. */
export function drawPath(key: number, points: readonly Pt[], { rises = {}, rounds = {} }: Drawn = {}): Path {
  return {
    id: `p${key}`,
    vertices: points.map((at, i) => {
      const vertex = { id: `v${key * 1000 + i + 1}`, at }
      return rounds[i] === undefined ? vertex : { ...vertex, roundM: rounds[i] }
    }),
    edges: points.map((_, i) => {
      const edge = { id: `e${key * 1000 + i + 1}` }
      return rises[i] === undefined ? edge : { ...edge, riseM: rises[i] }
    }),
  }
}

/** A line with two ends. */
export function drawLine(key: number, points: readonly Pt[], drawn: Drawn = {}): OpenPath {
  const closed = drawPath(key, points, drawn)
  return { ...closed, edges: closed.edges.slice(0, -1) }
}

export const rectangle = (x: number, y: number, w: number, h: number): Pt[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]

export const turned = (path: Path): Path => {
  const n = path.edges.length
  return {
    id: path.id,
    vertices: [...path.vertices].reverse(),
    edges: path.edges.map((_, i) => {
      const edge = path.edges[(2 * n - 2 - i) % n]!
      return edge.riseM === undefined ? edge : { ...edge, riseM: -edge.riseM }
    }),
  }
}

/** A circle of two half-circle edges, counter-clockwise. */
export const circlePath = (key: number, [x, y]: Pt, radiusM: number): Path =>
  drawPath(
    key,
    [
      [x - radiusM, y],
      [x + radiusM, y],
    ],
    { rises: { 0: radiusM, 1: radiusM } },
  )

export function drawSlab(outline: Path, parts: Partial<Slab> = {}): Slab {
  return {
    id: 's1',
    name: 'Slab',
    levelM: 0,
    outline,
    openings: [],
    thicknessM: 0.1,
    thickened: [],
    baseDepthM: 0.1,
    finishId: 'f1',
    borders: [],
    bands: [],
    insets: [],
    steps: [],
    obstacles: [],
    againstExisting: [],
    ...parts,
  }
}

export const drawOpening = (id: string, path: Path, kind: Opening['kind'] = 'planter'): Opening => ({ id, kind, path })

export const drawBorder = (id: string, path: Path, widthM: number, edges: Border['edges'] = 'all'): Border => ({
  id,
  pathId: path.id,
  edges,
  widthM,
  finishId: 'f2',
  placed: 'withField',
})

export const drawBand = (id: string, line: OpenPath, widthM: number): Band => ({
  id,
  line,
  widthM,
  finishId: 'f3',
  placed: 'withField',
})

export const drawInset = (id: string, path: Path): Inset => ({ id, path, finishId: 'f4', placed: 'withField' })
