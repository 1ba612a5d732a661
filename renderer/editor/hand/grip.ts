/** What is chosen, taken hold of by the pointer: carried by one of its corners, or rounded and bent by the ring beside it. */
import { findVertex } from '../../../core/document/commands/findPath'
import { findLinePoint } from '../../../core/document/commands/linePoints'
import { moveSelection } from '../../../core/document/commands/moveSelection'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { printedStep, wholeStep } from '../aim'
import { pickHandle } from '../pickPart'
import { type ShapeHandle, shapeHandle } from '../shapeHandle'
import type { Desk } from './desk'
import { type Hand, handAim, reachPx } from './handAim'

/** Meters of radius for a meter of the hand at a right angle, 1/(√2 − 1). */
const ringPull = 2.4

interface Part {
  /** Where the pointer came down. */
  readonly start: Pt
  /** The corner that is carried. */
  readonly handle: Pt
  readonly ids: readonly Id[]
}

export interface Grip {
  /** True where the pointer is on a handle of what is chosen, which then follows it. */
  take(at: Pt, hand: Hand): boolean
  readonly holds: () => boolean
  move(at: Pt, hand: Hand): void
  /** Commits what the hand made, unless it never moved. */
  end(at: Pt, hand: Hand, moved: boolean): void
  /** Lets go without a word; the preview is left to the caller. */
  drop(): void
}

export function createGrip(desk: Desk): Grip {
  const { store, site, committed, selection, preview, print } = desk
  let part: Part | null = null
  let ring: ShapeHandle | null = null

  /** Rounds or bends to a whole measure; what has no room stays as it last fitted. */
  const shape = (handle: ShapeHandle, at: Pt, { zoom, free = false }: Hand) => {
    const now = committed()
    if (!now) return
    const stepM = free ? printedStep(now.units) : wholeStep(ringPull * zoom, now.units)
    const measureM = Math.round(handle.measure(at) / stepM) * stepM
    const result = handle.command(measureM)(now)
    if (!result.ok || !handle.fits(result.value)) return
    site.show(() => result.value)
    const rest = print().length(Math.abs(measureM))
    store.setState({ aim: { at, caught: { relation: handle.words, rest } }, carrying: true })
  }
  const carry = ({ start, handle, ids }: Part, at: Pt, hand: Hand) => {
    const aim = handAim(desk, [handle[0] + at[0] - start[0], handle[1] + at[1] - start[1]], hand, ids)
    store.setState({ aim, carrying: true })
    preview(moveSelection(ids, [aim.at[0] - handle[0], aim.at[1] - handle[1]]))
  }

  const grip: Grip = {
    take(at, hand) {
      const now = committed()
      if (!now || selection().length === 0) return false
      ring = ringAt(now, selection(), at, hand)
      if (ring) return true
      const handle = pickHandle(now, selection(), at, reachPx(hand, 10) / hand.zoom)
      part = handle && { start: at, handle: handle.at, ids: handle.ids }
      return part !== null
    },
    holds: () => part !== null || ring !== null,
    move(at, hand) {
      if (ring) shape(ring, at, hand)
      else if (part) carry(part, at, hand)
    },
    end(at, hand, moved) {
      const step = ring ? ring.step : part && movedName(part.ids, committed())
      if (moved && step) {
        grip.move(at, hand)
        site.keep(step)
      }
      grip.drop()
      store.setState({ carrying: false, aim: null })
    },
    drop() {
      part = null
      ring = null
    },
  }
  return grip
}

const ringAt = (site: Site, selection: readonly Id[], at: Pt, hand: Hand): ShapeHandle | null => {
  const handle = shapeHandle(site, selection, hand.zoom)
  return handle && Math.hypot(handle.at[0] - at[0], handle.at[1] - at[1]) * hand.zoom <= reachPx(hand, 14)
    ? handle
    : null
}

const movedName = (ids: readonly Id[], site: Site | null): string =>
  site && ids.every(id => findVertex(site, id))
    ? 'move corner'
    : ids.every(id => site && findLinePoint(site, id))
      ? 'move point'
      : 'move'
