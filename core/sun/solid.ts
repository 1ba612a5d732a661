/** The shapes that shade casters are made of. Elevations in meters above the site datum. */
import type { Pt } from '../../shared/document/primitives'

/** An upright solid over rings (outer counter-clockwise, holes clockwise; x0, y0, x1, y1 …), elevations in meters. */
export interface Prism {
  readonly form: 'prism'
  readonly rings: readonly Float64Array[]
  readonly bottomM: number
  readonly topM: number
}

/** Flat faces (x0, y0, z0, x1 …), each shading from both sides; at least one is crossed by every ray that leaves the
 * solid they cover. */
export interface Faces {
  readonly form: 'faces'
  readonly faces: readonly Float64Array[]
  readonly bottomM: number
  readonly topM: number
}

/** An ellipsoid of revolution about an upright axis. */
export interface Crown {
  readonly form: 'crown'
  readonly at: Pt
  readonly radiusM: number
  readonly bottomM: number
  readonly topM: number
}

/** A thin upright screen from `from` to `to`. */
export interface Screen {
  readonly form: 'screen'
  readonly from: Pt
  readonly to: Pt
  readonly bottomM: number
  readonly topM: number
}

export type Solid = Prism | Faces | Crown | Screen
