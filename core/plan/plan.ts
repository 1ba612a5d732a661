/** Everything derived from a site for one date. */

import type { PourPart } from '../../shared/document/pours'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import type { Quantity } from '../../shared/planJson'
import type { Problem } from '../../shared/problem'
import type { CurveRegion, Region } from '../geometry/curve'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import type { PourDayPlan } from '../pours/day/pourDay'
import type { OrderFigures } from '../pours/order/planDays'
import type { PourDay } from '../pours/order/settleDays'
import type { CostTerm } from '../pours/proposal'
import type { ResolvedCaster } from '../sun/resolveCaster'
import type { SiteDay } from '../sun/siteDay'
import type { SunPosition } from '../sun/sunPosition'
import type { SlabCapacity } from './planCapacity'

export interface PlannedPour {
  readonly id: string
  readonly slabId: string
  readonly part: PourPart
  readonly number: string
  readonly proposed: boolean
  readonly region: CurveRegion
  readonly areaM2: number
  /** Length over width of the minimum-area rectangle. */
  readonly aspect: number
  /** Null where the pour has no corner. */
  readonly minCornerDeg: number | null
  /** What a proposed pour adds to the cost of the split, feet of joint; absent where it was not split. */
  readonly cost?: readonly CostTerm[]
  readonly order: number
  readonly day: number
  readonly date: string | null
  /** `HH:MM` of the first truck, where the crew has another pour to finish first. */
  readonly firstTruck?: string
}

export interface PlannedJoint {
  readonly id: string
  readonly slabId: string
  readonly kind: 'construction' | 'isolation'
  readonly pourIds: readonly string[]
  readonly from: Pt
  readonly to: Pt
  readonly lengthM: number
  readonly locked: boolean
}

export interface HourShadow {
  readonly ms: number
  readonly slabId: string
  readonly areaM2: number
  readonly polygons: readonly Region[]
  readonly dapple: readonly { readonly region: Region; readonly transmission: number }[]
}

export type SunShares = readonly (number | null)[]

export interface PlanShade {
  readonly stepMin: number
  readonly minSunAltitudeDeg: number
  readonly instants: readonly number[]
  readonly sun: readonly SunPosition[]
  readonly slabShares: ReadonlyMap<string, SunShares>
  readonly pourShares: ReadonlyMap<string, SunShares>
  readonly shadows: readonly HourShadow[]
}

export interface PlannedPoint {
  readonly id: string
  readonly name: string
  readonly at: Pt
  readonly slabId: string
  readonly directSunMin: number
  readonly firstSunMs: number | null
  readonly lastSunMs: number | null
}

export interface Plan {
  readonly site: Site
  readonly date: string
  readonly day: SiteDay
  readonly slabs: readonly ResolvedSlab[]
  readonly casters: readonly ResolvedCaster[]
  readonly pours: readonly PlannedPour[]
  readonly joints: readonly PlannedJoint[]
  /** The days with a pour, in order. */
  readonly days: readonly PourDay[]
  readonly order: OrderFigures
  readonly shade: PlanShade
  readonly points: readonly PlannedPoint[]
  readonly quantities: readonly Quantity[]
  /** Empty without crew and weather. */
  readonly dayPlans: readonly PourDayPlan[]
  /** The largest area at one time, a slab each. */
  readonly capacities: readonly SlabCapacity[]
  readonly problems: readonly Problem[]
}
