/** "Mark today's shade line and the time": which height, overhang or north would put the line where it was seen. */
import type { Caster } from '../../shared/document/caster'
import type { Id, Pt } from '../../shared/document/primitives'
import type { Place, Site } from '../../shared/document/site'
import { err, type Finding, ok, type Result } from '../../shared/problem'
import { type CasterPatch, changeCaster } from '../document/commands/changeEntity'
import type { Command } from '../document/commands/editSite'
import { setNorth } from '../document/commands/setSite'
import { inSunShare, pointShare } from './pointSun'
import { type ResolvedCaster, resolveCaster } from './resolveCaster'
import { canReach } from './shadowBox'
import { isSunUp } from './sunlitSpans'
import { shadowPerMeter, sunPosition } from './sunPosition'

export interface ShadeMark {
  /** One point of the shade line, or the two ends of a short piece of it. */
  readonly points: readonly [Pt] | readonly [Pt, Pt]
  /** Elevation of the slab's top. */
  readonly levelM: number
  /** When it was seen, UTC milliseconds. */
  readonly ms: number
  /** The site's date then, `YYYY-MM-DD`, for leaves. */
  readonly date: string
}

/** What would be changed: the height of a caster's eave, top or roof, an overhang, or the site's north. */
export type ShadeCause = 'height' | 'overhang' | 'north'

export interface ShadeExplanation {
  readonly cause: ShadeCause
  /** Undefined for north. */
  readonly casterId?: Id
  /** Elevations and lengths in meters, north in degrees. */
  readonly from: number
  readonly to: number
  /** Half the difference between what the two ends of a marked line ask for; 0 for one point. */
  readonly spread: number
  /** The change over what such a value is commonly off by, the spread counted too: small is likely. */
  readonly surprise: number
  readonly apply: Command
}

/** What a typed value is commonly off by, and how far it is looked for: own choice. */
const reach = {
  height: { commonly: 0.6, most: 4.5 },
  overhang: { commonly: 0.3, most: 1.2 },
  north: { commonly: 5, most: 30 },
} as const

/** Values tried each way before the first change of light is halved down. */
const trials = 90

interface Cause {
  readonly cause: ShadeCause
  readonly casterId?: Id
  readonly from: number
  readonly least: number
  /** True where the marked point is in sun with this value. */
  inSun(value: number, at: Pt): boolean
  apply(value: number): Command
}

interface CasterCause {
  readonly cause: 'height' | 'overhang'
  readonly from: number
  readonly least: number
  patch(value: number): CasterPatch
}

/** A crown keeps its shape and a cover its depth as they go up and down. */
const causesOf = (caster: Caster): readonly CasterCause[] => {
  const height = (from: number, least: number, patch: (value: number) => CasterPatch): CasterCause => ({
    cause: 'height',
    from,
    least,
    patch,
  })
  switch (caster.kind) {
    case 'building':
      return [
        height(caster.eaveM, caster.baseM, eaveM => ({ eaveM })),
        { cause: 'overhang', from: caster.overhangM, least: 0, patch: overhangM => ({ overhangM }) },
      ]
    case 'wall':
      return [height(caster.topM, caster.baseM, topM => ({ topM }))]
    case 'tree':
      return [height(caster.topM, caster.trunkM, topM => ({ topM }))]
    case 'cover': {
      const depthM = caster.topM - caster.undersideM
      return [height(caster.undersideM, -Infinity, undersideM => ({ undersideM, topM: undersideM + depthM }))]
    }
  }
}

class Light {
  private readonly sun

  constructor(
    private readonly site: Site,
    private readonly mark: ShadeMark,
    readonly resolved: readonly ResolvedCaster[],
  ) {
    this.sun = sunPosition(mark.ms, site.place.latDeg, site.place.lonDeg)
  }

  perMeter(northDeg = this.site.place.northDeg): Pt {
    return shadowPerMeter(this.sun, northDeg)
  }

  share(at: Pt, casters: readonly ResolvedCaster[], perMeter: Pt = this.perMeter()): number {
    return pointShare(at, this.mark.levelM, casters, perMeter, this.mark.date, this.site.settings)
  }

  /** Whether the caster's shadow can come as far as a marked point. */
  reaches({ solids, boxes }: ResolvedCaster): boolean {
    const [kx, ky] = this.perMeter()
    return this.mark.points.some(([x, y]) => {
      const here = { minX: x, minY: y, maxX: x, maxY: y }
      return solids.some((solid, i) => canReach(solid, boxes[i]!, here, this.mark.levelM, kx, ky))
    })
  }
}

const casterCauses = (light: Light, caster: Caster, others: readonly ResolvedCaster[]): readonly Cause[] =>
  causesOf(caster).flatMap(({ cause, from, least, patch }): readonly Cause[] => {
    const withValue = (value: number) => resolveCaster({ ...caster, ...patch(value) } as Caster).value
    if (!light.reaches(withValue(from + reach[cause].most))) return []
    const known = new Map<number, ResolvedCaster>()
    const resolvedAt = (value: number): ResolvedCaster => {
      const ready = known.get(value) ?? withValue(value)
      known.set(value, ready)
      return ready
    }
    const rest = new Map<Pt, number>()
    return [
      {
        cause,
        casterId: caster.id,
        from,
        least,
        inSun: (value, at) => {
          const through = rest.get(at) ?? light.share(at, others)
          rest.set(at, through)
          return through * light.share(at, [resolvedAt(value)]) >= inSunShare
        },
        apply: value => changeCaster(caster.id, patch(value)),
      },
    ]
  })

const northCause = (light: Light, place: Place): Cause => ({
  cause: 'north',
  from: place.northDeg,
  least: -Infinity,
  inSun: (value, at) => light.share(at, light.resolved, light.perMeter(value)) >= inSunShare,
  apply: setNorth,
})

/** The value nearest to the present one at which the light on the point changes; undefined where none within reach does. */
const turningValue = ({ cause, from, least, inSun }: Cause, at: Pt): number | undefined => {
  const now = inSun(from, at)
  const step = reach[cause].most / trials
  for (let k = 1; k <= trials; k++) {
    const found: number[] = []
    for (const sign of [1, -1]) {
      let [near, far] = [from + sign * step * (k - 1), from + sign * step * k]
      if (far < least || inSun(far, at) === now) continue
      for (let halving = 0; halving < 40; halving++) {
        const middle = (near + far) / 2
        if (inSun(middle, at) === now) near = middle
        else far = middle
      }
      found.push((near + far) / 2)
    }
    const best = found.sort((a, b) => Math.abs(a - from) - Math.abs(b - from))[0]
    if (best !== undefined) return best
  }
  return undefined
}

const explain = (cause: Cause, points: ShadeMark['points']): readonly ShadeExplanation[] => {
  const values = points.flatMap(at => turningValue(cause, at) ?? [])
  if (values.length < points.length) return []
  const to = values.reduce((sum, value) => sum + value, 0) / values.length
  const spread = (Math.max(...values) - Math.min(...values)) / 2
  const { from, casterId } = cause
  return [
    {
      cause: cause.cause,
      ...(casterId === undefined ? {} : { casterId }),
      from,
      to,
      spread,
      surprise: (Math.abs(to - from) + 2 * spread) / reach[cause.cause].commonly,
      apply: cause.apply(to),
    },
  ]
}

/**
 * Single changes of the site that would put the shade line onto the mark at that instant, the smallest first, each with
 * the command that makes it. Heights are looked for within 15 ft, overhangs within 4 ft, north within 30° of what the
 * plan has. Refused when the sun is too low; `shadeNotExplained` where no single change does it.
 */
export const explainShadeLine = (
  site: Site,
  mark: ShadeMark,
): Result<readonly ShadeExplanation[], readonly Finding[]> => {
  const { altitudeDeg } = sunPosition(mark.ms, site.place.latDeg, site.place.lonDeg)
  if (!isSunUp(altitudeDeg, site.settings))
    return err([{ code: 'sunTooLow', severity: 'stop', values: { altitudeDeg } }])
  const resolved = site.casters.map(caster => resolveCaster(caster).value)
  const light = new Light(site, mark, resolved)
  const causes = [
    ...site.casters.flatMap((caster, i) =>
      casterCauses(
        light,
        caster,
        resolved.filter((_, k) => k !== i),
      ),
    ),
    northCause(light, site.place),
  ]
  const explanations = causes.flatMap(cause => explain(cause, mark.points)).sort((a, b) => a.surprise - b.surprise)
  if (explanations.length > 0) return ok(explanations)
  return err([{ code: 'shadeNotExplained', severity: 'check', values: {} }])
}
