import { type Box, boxesMeet, edgeBounds, edgeMeets, joinBounds } from './bounds'
import type { CurveEdge } from './curve'

/** Below this many edges looking through all of them is quicker. */
const leastEdges = 24

/** Edges sorted into square cells, to find those near a box without looking at all of them. */
export class EdgeGrid {
  private readonly box: Box
  private readonly across: number
  private readonly cellM: number
  private readonly cells: number[][] = []
  private readonly seen: Int32Array
  private stamp = 0

  constructor(readonly edges: readonly CurveEdge[]) {
    this.box = joinBounds(edges.map(edgeBounds))
    this.across = edges.length < leastEdges ? 0 : Math.ceil(Math.sqrt(edges.length))
    const size = Math.max(this.box.maxX - this.box.minX, this.box.maxY - this.box.minY)
    this.cellM = size / Math.max(1, this.across) || 1
    this.seen = new Int32Array(edges.length)
    if (this.across === 0) return
    for (let i = 0; i < this.across * this.across; i++) this.cells.push([])
    edges.forEach((edge, i) => {
      this.eachCell(edgeBounds(edge), 0, cell => cell.push(i))
    })
  }

  private cellAt(v: number, least: number): number {
    return Math.max(0, Math.min(this.across - 1, Math.floor((v - least) / this.cellM)))
  }

  private eachCell(b: Box, marginM: number, visit: (cell: number[]) => void): void {
    const x1 = this.cellAt(b.maxX + marginM, this.box.minX)
    const y1 = this.cellAt(b.maxY + marginM, this.box.minY)
    for (let y = this.cellAt(b.minY - marginM, this.box.minY); y <= y1; y++)
      for (let x = this.cellAt(b.minX - marginM, this.box.minX); x <= x1; x++) visit(this.cells[y * this.across + x]!)
  }

  /** Indices, in rising order, of the edges whose boxes come within `marginM` of a box. */
  near(b: Box, marginM: number): number[] {
    const found: number[] = []
    if (!boxesMeet(b, this.box, marginM)) return found
    if (this.across === 0) {
      for (let i = 0; i < this.edges.length; i++) if (edgeMeets(this.edges[i]!, b, marginM)) found.push(i)
      return found
    }
    const stamp = ++this.stamp
    this.eachCell(b, marginM, cell => {
      for (const i of cell) {
        if (this.seen[i] === stamp) continue
        this.seen[i] = stamp
        if (edgeMeets(this.edges[i]!, b, marginM)) found.push(i)
      }
    })
    return found.sort((p, q) => p - q)
  }
}

const knownGrids = new WeakMap<readonly CurveEdge[], EdgeGrid>()

/** The grid of a ring; rings never change, so it is built once. */
export function gridOf(edges: readonly CurveEdge[]): EdgeGrid {
  const known = knownGrids.get(edges)
  if (known) return known
  const grid = new EdgeGrid(edges)
  knownGrids.set(edges, grid)
  return grid
}
