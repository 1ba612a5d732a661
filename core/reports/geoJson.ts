/** The plan as a GeoJSON FeatureCollection after RFC 7946: WGS 84, [longitude, latitude], no crs member. */
import type { Pt } from '../../shared/document/primitives'
import type { CurveRegion, Ring } from '../geometry/curve'
import { flattenRing } from '../geometry/flattenRing'
import { toGeographic } from './geographic'
import type { SheetCaster, SheetData, SheetPlace } from './sheetData'

export type Position = [lonDeg: number, latDeg: number]

export type GeoJsonGeometry =
  | { type: 'Polygon'; coordinates: Position[][] }
  | { type: 'MultiPolygon'; coordinates: Position[][][] }
  | { type: 'LineString'; coordinates: Position[] }
  | { type: 'Point'; coordinates: Position }

export interface GeoJsonFeature {
  readonly type: 'Feature'
  readonly id: string
  readonly properties: Readonly<Record<string, string | number | boolean | null>>
  readonly geometry: GeoJsonGeometry
}

export interface GeoJsonCollection {
  readonly type: 'FeatureCollection'
  readonly features: readonly GeoJsonFeature[]
}

/** RFC 7946 §11.2 finds six decimals (10 cm) enough for most; a form stands to 1/16 in, so eight (1 mm) are kept. */
const decimals = 1e8
const round = (value: number): number => Math.round(value * decimals) / decimals

/** Twice the signed area in the plane of the coordinates: > 0 is counter-clockwise. */
const signed = (ring: readonly Position[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [px, py] = ring[(i + ring.length - 1) % ring.length]!
    return sum + px * y - x * py
  }, 0)

/** A closed linear ring wound by the right-hand rule of RFC 7946 §3.1.6: exterior counter-clockwise, holes clockwise. */
export function windRing(ring: readonly Position[], kind: 'exterior' | 'hole'): Position[] {
  const first = ring[0]
  const last = ring.at(-1)
  if (first === undefined || last === undefined) return []
  const open = ring.length > 1 && first[0] === last[0] && first[1] === last[1] ? ring.slice(0, -1) : ring
  const turned = signed(open) > 0 === (kind === 'exterior') ? open : [open[0]!, ...open.slice(1).reverse()]
  return [...turned, turned[0]!]
}

const position =
  (place: SheetPlace) =>
  (point: Pt): Position => {
    const [lonDeg, latDeg] = toGeographic(place, point)
    return [round(lonDeg), round(latDeg)]
  }

const polygon = (place: SheetPlace, outer: Ring, holes: readonly Ring[]): Position[][] => [
  windRing(outer.map(position(place)), 'exterior'),
  ...holes.map(hole => windRing(hole.map(position(place)), 'hole')),
]

const curvePolygon = (place: SheetPlace, region: CurveRegion): Position[][] =>
  polygon(
    place,
    flattenRing(region.outer),
    region.holes.map(hole => flattenRing(hole)),
  )

const regionsGeometry = (place: SheetPlace, regions: readonly CurveRegion[]): GeoJsonGeometry =>
  regions.length === 1
    ? { type: 'Polygon', coordinates: curvePolygon(place, regions[0]!) }
    : { type: 'MultiPolygon', coordinates: regions.map(region => curvePolygon(place, region)) }

function casterGeometry(place: SheetPlace, { shape }: SheetCaster): GeoJsonGeometry {
  if (shape.form === 'rings') {
    const [outer = [], ...holes] = shape.rings
    return { type: 'Polygon', coordinates: polygon(place, outer, holes) }
  }
  if (shape.form === 'line') return { type: 'LineString', coordinates: shape.points.map(position(place)) }
  return { type: 'Point', coordinates: position(place)(shape.center) }
}

const feature = (id: string, geometry: GeoJsonGeometry, properties: GeoJsonFeature['properties']): GeoJsonFeature => ({
  type: 'Feature',
  id,
  properties,
  geometry,
})

/** Slabs (less openings), openings, borders, bands, insets, pours, joints, casters and marked points; lengths in meters. */
export function geoJson(data: SheetData): GeoJsonCollection {
  const { place } = data
  const features: GeoJsonFeature[] = []
  for (const slab of data.slabs) {
    if (slab.net.length > 0)
      features.push(
        feature(slab.id, regionsGeometry(place, slab.net), {
          kind: 'slab',
          name: slab.name,
          finish: slab.finishName,
          areaM2: slab.netAreaM2,
          levelM: slab.levelM,
          thicknessM: slab.thicknessM,
        }),
      )
    for (const opening of slab.openings)
      features.push(
        feature(opening.id, regionsGeometry(place, [{ outer: opening.ring, holes: [] }]), {
          kind: 'opening',
          opening: opening.kind,
          name: opening.name ?? null,
          slab: slab.id,
          areaM2: opening.areaM2,
        }),
      )
    for (const part of slab.finishParts)
      if (part.shape.length > 0)
        features.push(
          feature(part.id, regionsGeometry(place, part.shape), {
            kind: part.kind,
            name: part.name ?? null,
            finish: part.finishName,
            slab: slab.id,
            areaM2: part.areaM2,
            widthM: part.widthM ?? null,
            lengthM: part.lengthM ?? null,
          }),
        )
  }
  for (const pour of data.pours)
    features.push(
      feature(pour.id, regionsGeometry(place, [pour.region]), {
        kind: 'pour',
        number: pour.number,
        slab: pour.slabId,
        areaM2: pour.areaM2,
        order: pour.order,
        day: pour.day,
        date: pour.date,
        proposed: pour.proposed,
      }),
    )
  for (const joint of data.joints)
    features.push(
      feature(
        joint.id,
        { type: 'LineString', coordinates: [position(place)(joint.from), position(place)(joint.to)] },
        { kind: `${joint.kind} joint`, slab: joint.slabId, lengthM: joint.lengthM },
      ),
    )
  for (const caster of data.casters)
    features.push(
      feature(caster.id, casterGeometry(place, caster), {
        kind: caster.kind,
        name: caster.name,
        topM: caster.topM,
        baseM: caster.baseM,
        radiusM: caster.shape.form === 'circle' ? caster.shape.radiusM : null,
      }),
    )
  for (const point of data.points)
    features.push(
      feature(point.id, { type: 'Point', coordinates: position(place)(point.at) }, { kind: 'point', name: point.name }),
    )
  return { type: 'FeatureCollection', features }
}
