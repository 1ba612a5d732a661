/** The end of a pour: its shape as built, frozen; where it was stopped short, up to how far the concrete came. */
import type { LogTap } from '../../../shared/document/day'
import type { Path } from '../../../shared/document/path'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { type Command, type Edit, type EditResult, editSite, missing } from '../../document/commands/editSite'
import { logTap, openEntry, type PourStart } from '../../document/commands/logTaps'
import type { CurveRegion, CurveRing } from '../../geometry/curve'
import { flattenRing } from '../../geometry/flattenRing'
import { interiorPoint } from '../../geometry/interiorPoint'
import { cutStrips, type Direction } from '../day/strips'
import { splitPour } from '../editing/splitPour'
import { slabFront } from './front'

/** A stop this near an end is that end: about 4 in. */
const endM = 0.1

export interface PouredTo {
  readonly region: CurveRegion
  readonly areaM2: number
  readonly direction: Direction
  /** How far the concrete came; the whole pour if left out. */
  readonly comeM?: number
}

interface Part {
  readonly region: CurveRegion
  readonly areaM2: number
}

const largest = (regions: readonly CurveRegion[], direction: Direction): Part =>
  regions
    .map(region => ({ region, areaM2: slabFront(region, direction).areaTo(Number.POSITIVE_INFINITY) }))
    .reduce((most, part) => (part.areaM2 > most.areaM2 ? part : most))

const pathOf = (edit: Edit, ring: CurveRing): Path => {
  const points = flattenRing(ring)
  return {
    id: edit.mint('r'),
    vertices: points.map(([x, y]) => ({ id: edit.mint('v'), at: [x, y] })),
    edges: points.map(() => ({ id: edit.mint('e') })),
  }
}

const freeze =
  (pourId: Id, { region, areaM2 }: Part): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const pour = draft.accepted.flatMap(({ pours }) => pours).find(({ id }) => id === pourId)
      const entry = openEntry(draft, pourId)
      if (!pour || !entry) return missing('pour', pourId)
      if (pour.poured)
        return { code: 'pourIsPoured', severity: 'stop', values: { number: pour.number }, at: { entityId: pourId } }
      pour.poured = {
        outline: pathOf(edit, region.outer),
        holes: region.holes.map(hole => pathOf(edit, hole)),
        ...{ areaM2, logId: entry.id },
      }
      return undefined
    })

const after = (made: EditResult, next: Command): EditResult => {
  if (!made.ok) return made
  const then = next(made.value)
  return then.ok
    ? { ...then, findings: [...made.findings, ...then.findings], made: [...made.made, ...then.made] }
    : then
}

/** The fallback joint becomes a construction joint; what lies ahead of it is a pour of its own. */
function stopAt(site: Site, pourId: Id, to: PouredTo, comeM: number): { made: EditResult; part: Part } {
  const { region, areaM2, direction } = to
  const behindM2 = slabFront(region, direction).areaTo(comeM)
  const [behind, ahead] = cutStrips(region, direction, [behindM2, areaM2 - behindM2])
  const part = largest(behind!.regions, direction)
  const rest = largest(ahead!.regions, direction)
  const pourOf = (of: Site, id: Id) => of.accepted.flatMap(({ pours }) => pours).find(own => own.id === id)
  const lock = pourOf(site, pourId)?.lock
  const change =
    (recipe: (draft: Site, edit: Edit) => undefined): Command =>
    of =>
      editSite(of, recipe)
  const free = change(draft => {
    const pour = pourOf(draft, pourId)
    if (pour) pour.lock = { ...pour.lock, shape: false }
    return undefined
  })(site)
  const ends = behind!.ends
  const split = after(free, of => splitPour(of, pourId, [ends[0]!.from, ends.at(-1)!.to]))
  // Splitting lets the larger part keep the number: here the part that is down does.
  const settled = after(split, of =>
    change(draft => {
      const pour = pourOf(draft, pourId)
      const others = draft.accepted.flatMap(({ pours }) => pours)
      const other = split.ok ? others.find(({ id }) => split.made.includes(id)) : undefined
      if (pour) {
        pour.seed = interiorPoint(part.region) ?? pour.seed
        if (lock) pour.lock = { ...lock }
      }
      if (other) other.seed = interiorPoint(rest.region) ?? other.seed
      return undefined
    })(of),
  )
  return { made: settled, part }
}

/** Logs the end and freezes the pour as built, in one step. Refused where it is poured already. */
export const markPoured =
  (pourId: Id, atUtc: string, start: PourStart, to: PouredTo, source: LogTap['source'] = 'tap'): Command =>
  site => {
    const { comeM } = to
    const logged = logTap(
      pourId,
      { atUtc, what: 'done', ...(comeM === undefined ? {} : { comeM }), source },
      start,
    )(site)
    if (!logged.ok) return logged
    const { lengthM } = slabFront(to.region, to.direction)
    if (comeM === undefined || comeM >= lengthM - endM)
      return after(logged, freeze(pourId, { region: to.region, areaM2: to.areaM2 }))
    const { made, part } = stopAt(logged.value, pourId, to, Math.max(comeM, endM))
    return after(made, freeze(pourId, part))
  }
