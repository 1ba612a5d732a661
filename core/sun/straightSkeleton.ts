/**
 * Equal-pitch roof of a simple footprint: every eave moves inward at its speed, and the strip it sweeps until its
 * neighbors change is one flat piece of roof. Pieces of one eave lie in one plane, so no arcs need to be joined up.
 * Events: an edge shrinks to a point, two edges fold onto each other (a ridge), a re-entrant corner meets an edge
 * (split). Source of the construction: O. Aichholzer, F. Aurenhammer, D. Alberts, B. Gärtner, "A novel type of skeleton
 * for polygons", Journal of Universal Computer Science 1(12), 1995.
 */
import type { Pt } from '../../shared/document/primitives'
import type { Ring } from '../geometry/curve'
import { flatRingArea } from '../geometry/flatArea'

/** [x, y, inset]: `inset` = how far the eaves have moved in, meters. */
export type RoofPoint = readonly [xM: number, yM: number, insetM: number]

/** `side` = index of the ring's edge, from vertex `side` to the next one. */
export interface RoofPiece {
  readonly side: number
  readonly points: readonly RoofPoint[]
}

/** Closer than this is touching: below what a tape or the clipping grid resolves. */
const touchM = 1e-6
/** Largest share of the footprint that the pieces may miss before the answer is refused. */
const areaTolerance = 1e-6
/** Beyond this many corners the cubic search would take seconds. */
const mostCorners = 400

interface Side {
  readonly side: number
  /** The start corner now. */
  x: number
  y: number
  vx: number
  vy: number
  /** Its two ends when its neighbors last changed. */
  from: RoofPoint
  to: RoofPoint
}

interface Line {
  readonly dx: number
  readonly dy: number
  readonly speed: number
}

class Wavefront {
  readonly pieces: RoofPiece[] = []
  private loops: Side[][]
  private inset = 0
  private readonly lines: readonly Line[]

  constructor(ring: Ring, speeds: readonly number[]) {
    this.lines = ring.map(([x, y], side) => {
      const [nx, ny] = ring[(side + 1) % ring.length]!
      const length = Math.hypot(nx - x, ny - y)
      return { dx: (nx - x) / length, dy: (ny - y) / length, speed: speeds[side]! }
    })
    this.loops = [
      ring.map(([x, y], side) => {
        const [nx, ny] = ring[(side + 1) % ring.length]!
        return { side, x, y, vx: 0, vy: 0, from: [x, y, 0], to: [nx, ny, 0] }
      }),
    ]
  }

  /** False where no next event is found or corners run away: the caller then refuses the roof. */
  run(): boolean {
    const mostEvents = 10 * this.lines.length + 100
    for (let event = 0; event < mostEvents; event++) {
      if (this.loops.length === 0) return true
      for (const loop of this.loops) if (!this.aim(loop)) return false
      const step = Math.min(...this.loops.map(loop => this.nextEvent(loop)))
      if (!Number.isFinite(step)) return false
      this.inset += step
      for (const loop of this.loops)
        for (const side of loop) {
          side.x += side.vx * step
          side.y += side.vy * step
        }
      const settled: Side[][] = []
      for (const loop of this.loops) this.settle(loop, settled)
      this.loops = settled
    }
    return false
  }

  /** Velocity of each start corner: both its lines move inward at their speeds. */
  private aim(loop: Side[]): boolean {
    for (let i = 0; i < loop.length; i++) {
      const side = loop[i]!
      const a = this.lines[loop[(i + loop.length - 1) % loop.length]!.side]!
      const b = this.lines[side.side]!
      const cross = a.dx * b.dy - a.dy * b.dx
      if (Math.abs(cross) > 1e-9) {
        ;[side.vx, side.vy] = cornerVelocity(a, b, cross)
      } else if (a.dx * b.dx + a.dy * b.dy > 0 && a.speed === b.speed) {
        side.vx = -b.dy * b.speed
        side.vy = b.dx * b.speed
      } else return false
    }
    return true
  }

  private nextEvent(loop: readonly Side[]): number {
    const count = loop.length
    let soonest = Number.POSITIVE_INFINITY
    for (let i = 0; i < count; i++) {
      const side = loop[i]!
      const next = loop[(i + 1) % count]!
      const { dx, dy } = this.lines[side.side]!
      const shrink = (next.vx - side.vx) * dx + (next.vy - side.vy) * dy
      if (shrink < -1e-12) {
        const wait = Math.max(0, ((next.x - side.x) * dx + (next.y - side.y) * dy) / -shrink)
        if (wait < soonest) soonest = wait
      }
      const before = this.lines[loop[(i + count - 1) % count]!.side]!
      if (before.dx * dy - before.dy * dx > -1e-9) continue
      for (let k = 0; k < count; k++) {
        if (k === i || (k + 1) % count === i) continue
        const wait = this.splitWait(side, loop[k]!, loop[(k + 1) % count]!)
        if (wait < soonest) soonest = wait
      }
    }
    return soonest
  }

  /** When the start corner of `corner` reaches the moving edge from `a` to `b`; infinite if it misses. */
  private splitWait(corner: Side, a: Side, b: Side): number {
    const { dx, dy, speed } = this.lines[a.side]!
    const gap = (corner.x - a.x) * -dy + (corner.y - a.y) * dx
    const closing = speed - (corner.vx * -dy + corner.vy * dx)
    if (closing < 1e-12 || gap < -touchM) return Number.POSITIVE_INFINITY
    const wait = Math.max(0, gap / closing)
    const x = corner.x + corner.vx * wait
    const y = corner.y + corner.vy * wait
    const along = (x - a.x - a.vx * wait) * dx + (y - a.y - a.vy * wait) * dy
    const length = (b.x + b.vx * wait - a.x - a.vx * wait) * dx + (b.y + b.vy * wait - a.y - a.vy * wait) * dy
    return along > -touchM && along < length + touchM ? wait : Number.POSITIVE_INFINITY
  }

  /** Ends the piece of roof under `loop[i]`; the side goes on from where it is. */
  private close(loop: readonly Side[], index: number): void {
    const count = loop.length
    const side = loop[(index + count) % count]!
    const next = loop[(index + 1 + count) % count]!
    const start: RoofPoint = [side.x, side.y, this.inset]
    const end: RoofPoint = [next.x, next.y, this.inset]
    if (side.from[2] < this.inset) {
      const points = [side.from, side.to, end, start].filter(
        (point, at, all) => distance(point, all[(at + 1) % 4]!) > touchM,
      )
      if (points.length >= 3) this.pieces.push({ side: side.side, points })
    }
    side.from = start
    side.to = end
  }

  /** Carries out every event that is due on the loop; what is left of it goes to `settled`. */
  private settle(loop: Side[], settled: Side[][]): void {
    for (;;) {
      const count = loop.length
      if (count < 3) {
        for (let i = 0; i < count; i++) this.close(loop, i)
        return
      }
      const collapsed = loop.findIndex((side, i) => isTouching(side, loop[(i + 1) % count]!))
      if (collapsed >= 0) {
        for (let i = collapsed - 1; i <= collapsed + 1; i++) this.close(loop, i)
        loop.splice(collapsed, 1)
        continue
      }
      const fold = loop.findIndex((_, i) => this.isFold(loop, i))
      if (fold >= 0) {
        this.trimFold(loop, fold)
        continue
      }
      const split = this.findSplit(loop)
      if (split === null) {
        settled.push(loop)
        return
      }
      const [corner, edge] = split
      for (const i of [corner - 1, corner, edge]) this.close(loop, i)
      const turned = [...loop.slice(corner), ...loop.slice(0, corner)]
      const cut = (edge - corner + count) % count
      const { x, y } = turned[0]!
      const rest: Side = { ...turned[cut]!, x, y, from: [x, y, this.inset] }
      const front = turned.slice(0, cut + 1)
      front[cut]!.to = [x, y, this.inset]
      this.settle(front, settled)
      loop = [rest, ...turned.slice(cut + 1)]
    }
  }

  private isFold(loop: readonly Side[], i: number): boolean {
    const a = this.lines[loop[(i + loop.length - 1) % loop.length]!.side]!
    const b = this.lines[loop[i]!.side]!
    return Math.abs(a.dx * b.dy - a.dy * b.dx) < 1e-9 && a.dx * b.dx + a.dy * b.dy < 0
  }

  /** The sides before and after corner `i` lie on each other: the shorter one is done, the longer one is shortened. */
  private trimFold(loop: Side[], i: number): void {
    const count = loop.length
    const before = loop[(i + count - 1) % count]!
    const side = loop[i]!
    const after = loop[(i + 1) % count]!
    for (let k = i - 2; k <= i + 1; k++) this.close(loop, k)
    const beforeM = Math.hypot(side.x - before.x, side.y - before.y)
    const sideM = Math.hypot(after.x - side.x, after.y - side.y)
    if (beforeM < sideM) {
      side.x = before.x
      side.y = before.y
      side.from = [before.x, before.y, this.inset]
      loop.splice((i + count - 1) % count, 1)
    } else {
      before.to = [after.x, after.y, this.inset]
      loop.splice(i, 1)
    }
  }

  /** A re-entrant corner that touches an edge it does not belong to, as indices [corner, edge]. */
  private findSplit(loop: readonly Side[]): readonly [number, number] | null {
    const count = loop.length
    for (let i = 0; i < count; i++) {
      const corner = loop[i]!
      const a = this.lines[loop[(i + count - 1) % count]!.side]!
      const b = this.lines[corner.side]!
      if (a.dx * b.dy - a.dy * b.dx > -1e-9) continue
      for (let k = 0; k < count; k++) {
        if (k === i || (k + 1) % count === i) continue
        const start = loop[k]!
        const end = loop[(k + 1) % count]!
        const { dx, dy } = this.lines[start.side]!
        const gap = (corner.x - start.x) * -dy + (corner.y - start.y) * dx
        const along = (corner.x - start.x) * dx + (corner.y - start.y) * dy
        const length = (end.x - start.x) * dx + (end.y - start.y) * dy
        if (Math.abs(gap) < touchM && along > -touchM && along < length + touchM) return [i, k]
      }
    }
    return null
  }
}

/** The velocity whose part along each inward normal is that line's speed. */
const cornerVelocity = (a: Line, b: Line, cross: number): Pt => [
  (a.speed * b.dx - b.speed * a.dx) / cross,
  (a.speed * b.dy - b.speed * a.dy) / cross,
]

const isTouching = (a: Side, b: Side): boolean => Math.hypot(b.x - a.x, b.y - a.y) < touchM

const distance = (a: RoofPoint, b: RoofPoint): number => Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2])

/**
 * The pieces of roof over a simple counter-clockwise ring; counter-clockwise from above, upright where a speed is 0.
 * @param speeds of each side, 1 = slopes, 0 = stands upright (a gable)
 * @returns null where the wavefront fails: the ring crosses itself, has more than 400 corners, or the pieces do not
 * cover it
 */
export const straightSkeleton = (ring: Ring, speeds: readonly number[]): readonly RoofPiece[] | null => {
  if (ring.length < 3 || ring.length > mostCorners) return null
  const wavefront = new Wavefront(ring, speeds)
  if (!wavefront.run()) return null
  const coveredM2 = wavefront.pieces.reduce(
    (sum, { points }) => sum + flatRingArea(points.map(([x, y]): Pt => [x, y])),
    0,
  )
  const areaM2 = flatRingArea(ring)
  return Math.abs(coveredM2 - areaM2) <= areaTolerance * areaM2 ? wavefront.pieces : null
}
