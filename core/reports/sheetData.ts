/** What the sheets and exports are drawn from: plain data, SI, drawing-frame meters. */

import type { Pt } from '../../shared/document/primitives'
import type { Furnishing, Note, TapeDimension } from '../../shared/document/shown'
import type { UnitSystem } from '../../shared/document/site'
import type { Opening } from '../../shared/document/slab'
import type { Quantity } from '../../shared/planJson'
import type { Problem } from '../../shared/problem'
import type { CurveEdge, CurveRegion, CurveRing, Region, Ring } from '../geometry/curve'
import type { Alternative } from '../pours/alternatives/alternative'
import type { AlternativeSentence } from '../pours/alternatives/wordAlternative'
import type { ThickenedShape } from '../quantities/thickenedShapes'
import type { BidData } from './bidTable'

export interface SheetPlace {
  readonly name?: string
  readonly latDeg: number
  readonly lonDeg: number
  /** Clockwise angle from drawing-up to true north. */
  readonly northDeg: number
}

export interface SheetOpening {
  readonly id: string
  readonly kind: Opening['kind']
  readonly name?: string
  readonly ring: CurveRing
  readonly areaM2: number
}

/** A border, band or inset: a part of the slab with a finish of its own. */
export interface SheetFinishPart {
  readonly id: string
  readonly kind: 'border' | 'band' | 'inset'
  readonly name?: string
  readonly finishName: string
  /** Absent for an inset. */
  readonly widthM?: number
  readonly areaM2: number
  /** Along the bordered edges; the center line of a band; absent for an inset. */
  readonly lengthM?: number
  readonly innerLengthM?: number
  readonly centerLengthM?: number
  readonly shape: readonly CurveRegion[]
}

export interface SheetSlab {
  readonly id: string
  readonly name: string
  readonly finishName: string
  readonly levelM: number
  readonly thicknessM: number
  readonly outline: CurveRing
  readonly openings: readonly SheetOpening[]
  /** Outline less openings. */
  readonly net: readonly CurveRegion[]
  readonly finishParts: readonly SheetFinishPart[]
  readonly field: readonly CurveRegion[]
  readonly thickened: readonly ThickenedShape[]
  /** The lines of each flight of steps. */
  readonly steps: readonly (readonly CurveEdge[])[]
  readonly grossAreaM2: number
  readonly openingAreaM2: number
  readonly netAreaM2: number
  readonly fieldAreaM2: number
  readonly perimeterM: number
}

export type CasterShape =
  | { readonly form: 'rings'; readonly rings: readonly Ring[] }
  | { readonly form: 'line'; readonly points: readonly Pt[] }
  | { readonly form: 'circle'; readonly center: Pt; readonly radiusM: number }

export interface SheetCaster {
  readonly id: string
  readonly kind: 'building' | 'wall' | 'tree' | 'cover'
  readonly name: string
  readonly shape: CasterShape
  /** Elevations above the one site datum. */
  readonly topM: number
  readonly baseM: number
}

export interface SheetPoint {
  readonly id: string
  readonly name: string
  readonly at: Pt
}

export interface SheetPour {
  readonly id: string
  readonly number: string
  readonly slabId: string
  readonly region: CurveRegion
  readonly areaM2: number
  readonly order: number
  readonly day: number
  readonly date: string | null
  /** Concrete to order. */
  readonly concreteM3?: number
  readonly proposed: boolean
}

export interface SheetJoint {
  readonly id: string
  readonly slabId: string
  readonly kind: 'construction' | 'isolation'
  readonly pourIds: readonly string[]
  readonly from: Pt
  readonly to: Pt
  readonly lengthM: number
}

/** An instant of the site day that has a name on paper: `9 am`, `noon`, `2:30 pm`. */
export interface SheetHour {
  /** ISO 8601 with offset. */
  readonly time: string
  readonly label: string
  /** Minutes since the site's midnight, by the clock. */
  readonly clockMin: number
  readonly altitudeDeg: number
  readonly azimuthDeg: number
}

/** Shade of one slab at one hour, clipped to the slab: full shade, and where a part of the sun comes through. */
export interface SheetShadow {
  readonly time: string
  readonly slabId: string
  readonly polygons: readonly Region[]
  readonly dapple: readonly Region[]
}

/** Share of the area in direct sun, one value for each of `hours`; null while the sun is too low. */
export interface SheetSunShares {
  readonly id: string
  readonly sunShare: readonly (number | null)[]
}

/** A day with a pour, and which ways in and out its fresh concrete closes. */
export interface SheetDay {
  readonly day: number
  readonly date: string | null
  readonly pourIds: readonly string[]
  /** Poured on days before and not yet open to feet. */
  readonly freshPourIds: readonly string[]
  readonly hardPourIds: readonly string[]
  readonly closedWayIds: readonly string[]
  readonly waysReopen: readonly { readonly wayId: string; readonly date: string; readonly time: string }[]
}

/** A door or gate. */
export interface SheetWay {
  readonly id: string
  readonly name: string
  readonly at: Pt
  readonly widthM: number
}

/** What was asked of the joints. */
export type SheetWish =
  | { readonly id: string; readonly kind: 'required' | 'forbiddenLine'; readonly line: readonly Pt[] }
  | { readonly id: string; readonly kind: 'forbiddenArea'; readonly ring: CurveRing }
  | { readonly id: string; readonly kind: 'direction'; readonly line: readonly [Pt, Pt] }

/** One way to split a piece of a slab. */
export interface SheetAlternative {
  /** The same for all ways to split one piece. */
  readonly place: string
  readonly slabId: string
  readonly kind: Alternative['kind']
  readonly pours: readonly { readonly region: CurveRegion; readonly areaM2: number }[]
  readonly joints: readonly { readonly from: Pt; readonly to: Pt }[]
  readonly figures: Alternative['figures']
  readonly price: Alternative['price']
  /** What sun and shade on one pour cost, feet of joint; null where that was not looked at. */
  readonly shadeLineFt: number | null
  readonly sentences: readonly AlternativeSentence[]
}

export interface SheetData {
  readonly siteName: string
  readonly siteId: string
  /** YYYY-MM-DD */
  readonly date: string
  readonly zone: string
  readonly units: UnitSystem
  readonly place: SheetPlace
  readonly slabs: readonly SheetSlab[]
  readonly casters: readonly SheetCaster[]
  readonly points: readonly SheetPoint[]
  readonly pours: readonly SheetPour[]
  readonly joints: readonly SheetJoint[]
  /** Ways to split, where they were asked for. */
  readonly alternatives?: readonly SheetAlternative[]
  /** Contraction joints, sawn or tooled. */
  readonly contraction?: readonly { readonly from: Pt; readonly to: Pt }[]
  readonly days?: readonly SheetDay[]
  readonly ways?: readonly SheetWay[]
  readonly wishes?: readonly SheetWish[]
  readonly furnishings?: readonly Furnishing[]
  readonly notes?: readonly Note[]
  readonly tapes?: readonly TapeDimension[]
  /** Whole hours of the day with the sun above the threshold. */
  readonly hours: readonly SheetHour[]
  readonly shadows: readonly SheetShadow[]
  readonly slabShares: readonly SheetSunShares[]
  readonly pourShares: readonly SheetSunShares[]
  readonly quantities: readonly Quantity[]
  /** Price list and bid, where there are any. */
  readonly bid?: BidData
  /** What people call the entities whose ids stand in formulas. */
  readonly names: ReadonlyMap<string, string>
  readonly problems: readonly Problem[]
}
