/** Sun and shade against an ephemeris, a general geometry library, and the cost of touching memory once. */
import { booleanPointInPolygon, featureCollection, point, polygon, union } from '@turf/turf'
import { Body, Equator, Horizon, Observer } from 'astronomy-engine'
import type { Feature, MultiPolygon, Polygon } from 'geojson'
import { unionShadow } from '../../core/geometry/clip'
import { flattenRegion } from '../../core/geometry/flattenRing'
import { casterShadow } from '../../core/sun/casterShadow'
import { cellMasks } from '../../core/sun/cellMasks'
import { type Exposure, exposure, fillOpaque, updateExposure } from '../../core/sun/exposure'
import { type ResolvedCaster, resolveCaster } from '../../core/sun/resolveCaster'
import { shadeAt } from '../../core/sun/shadeAt'
import { siteDay } from '../../core/sun/siteDay'
import { shadowPerMeter, sunPosition } from '../../core/sun/sunPosition'
import type { Pt } from '../../shared/document/primitives'
import { box, building, place, seeded, slabOf } from '../sun/fixtures'
import type { Bench, BenchRow } from './row'

/** A court of 40 m by 30 m. */
const slab = slabOf(box(0, 0, 40, 30))

/** 100 flat buildings within 30 m about the court: turned rectangles and Ls, 2 to 7 m high. */
const hundredCasters = (): ResolvedCaster[] => {
  const random = seeded(42)
  const casters: ResolvedCaster[] = []
  while (casters.length < 100) {
    const [x, y] = [-30 + 100 * random(), -30 + 90 * random()]
    const [w, d] = [3 + 9 * random(), 3 + 9 * random()]
    const isEll = casters.length % 3 === 0
    const plan: Pt[] = isEll ? [[0, 0], [w, 0], [w, d / 2], [w / 2, d / 2], [w / 2, d], [0, d]] : box(0, 0, w, d) // biome-ignore format: one line
    const angle = Math.PI * random()
    const [c, s] = [Math.cos(angle), Math.sin(angle)]
    const footprint = plan.map(([px, py]): Pt => [x + px * c - py * s, y + px * s + py * c])
    const isOnSlab = footprint.some(([px, py]) => px > 0 && px < 40 && py > 0 && py < 30)
    const eaveM = 2 + 5 * random()
    if (!isOnSlab) casters.push(resolveCaster(building(footprint, { id: `c${casters.length + 1}`, eaveM })).value)
  }
  return casters
}

const timeMs = (run: () => unknown): number => {
  const start = performance.now()
  run()
  return performance.now() - start
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!

const medianMs = (run: () => unknown, rounds: number): number => {
  for (let warm = 0; warm < 3; warm++) run()
  return median(Array.from({ length: rounds }, () => timeMs(run)))
}

const sunGaps = (): { readonly altitudeDeg: number; readonly azimuthDeg: number } => {
  let altitudeDeg = 0
  let azimuthDeg = 0
  for (let latDeg = 0; latDeg <= 65; latDeg += 5)
    for (let month = 0; month < 12; month++)
      for (let hour = 0; hour < 24; hour++) {
        const ms = Date.UTC(2026, month, 15, hour)
        const date = new Date(ms)
        const observer = new Observer(latDeg, 0, 0)
        const { ra, dec } = Equator(Body.Sun, date, observer, true, true)
        const peer = Horizon(date, observer, ra, dec)
        if (peer.altitude <= 3) continue
        const own = sunPosition(ms, latDeg, 0)
        altitudeDeg = Math.max(altitudeDeg, Math.abs(own.trueAltitudeDeg - peer.altitude))
        const turn = ((own.azimuthDeg - peer.azimuth + 540) % 360) - 180
        azimuthDeg = Math.max(azimuthDeg, Math.abs(turn) * Math.cos((peer.altitude * Math.PI) / 180))
      }
  return { altitudeDeg, azimuthDeg }
}

/** Base, top and a strip along every edge of each caster: what a general library is given to unite. */
const sweptPolygons = (casters: readonly ResolvedCaster[], [kx, ky]: Pt): Feature<Polygon>[] =>
  casters.flatMap(({ solids }) =>
    solids.flatMap(solid => {
      if (solid.form !== 'prism') return []
      const [sx, sy] = [solid.topM * kx, solid.topM * ky]
      return solid.rings.flatMap(flat => {
        const ring = Array.from({ length: flat.length / 2 }, (_, i): [number, number] => [
          flat[2 * i]!,
          flat[2 * i + 1]!,
        ])
        const top = ring.map(([x, y]): [number, number] => [x + sx, y + sy])
        const strips = ring.map((a, i): [number, number][] => {
          const b = ring[(i + 1) % ring.length]!
          const [c, e] = [top[(i + 1) % ring.length]!, top[i]!]
          const isTurned = (b[0] - a[0]) * sy - (b[1] - a[1]) * sx < 0
          return isTurned ? [a, e, c, b, a] : [a, b, c, e, a]
        })
        return [[...ring, ring[0]!], [...top, top[0]!], ...strips].map(each => polygon([each]))
      })
    }),
  )

const touchFloor = (exposed: Exposure): (() => void) => {
  const cells = exposed.grid.columns * exposed.grid.rows
  const masks = [0, 1, 2, 3].map(() => new Int32Array(cells))
  return () => {
    for (let step = 0; step < exposed.lit.length; step++) {
      const mask = masks[step >> 5]!
      const bit = 1 << (step & 31)
      for (let cell = 0; cell < cells; cell++) mask[cell]! |= bit
    }
  }
}

/** After so many the engine has compiled all three for good: before, the masks take four times as long. */
const warmRounds = 120

/** Ratios taken round by round, so that other work on the machine falls on both sides. */
const rasterRatios = (exposed: Exposure, casters: readonly ResolvedCaster[]) => {
  const floor = touchFloor(exposed)
  const planes = new Int32Array(exposed.opaque.length)
  const fill = (): void => {
    planes.fill(0)
    fillOpaque(exposed, casters, planes)
  }
  const withMasks = (): void => {
    fill()
    cellMasks({ ...exposed, opaque: planes })
  }
  for (let warm = 0; warm < warmRounds; warm++) for (const run of [floor, fill, withMasks]) run()
  const rounds = Array.from({ length: 101 }, () => {
    const floorMs = timeMs(floor)
    return { floorMs, planes: timeMs(fill) / floorMs, masks: timeMs(withMasks) / floorMs }
  })
  return {
    floorMs: median(rounds.map(round => round.floorMs)),
    planes: median(rounds.map(round => round.planes)),
    masks: median(rounds.map(round => round.masks)),
  }
}

/** Asks for a sample of cells, step by step, whether any caster's shadow holds the center. */
const pointInPolygonMs = (exposed: Exposure, casters: readonly ResolvedCaster[], steps: readonly number[]): number => {
  const { grid, sun, lit } = exposed
  let asked = 0
  const spent = timeMs(() => {
    for (const step of steps) {
      const perMeter = shadowPerMeter(sun[lit[step]!]!, place.northDeg)
      const shadows = unionShadow(
        casters.flatMap(each =>
          casterShadow(each, 0, perMeter, exposed.day.date, undefined).flatMap(part => part.cycles),
        ),
        slab.net.map(region => flattenRegion(region)),
      ).map(({ ring, holes }) => polygon([ring, ...holes].map(each => [...each, each[0]!].map(([x, y]) => [x, y]))))
      for (let cell = 0; cell < grid.columns * grid.rows; cell += 17) {
        const x = grid.minX + ((cell % grid.columns) + 0.5) * grid.cellM
        const y = grid.minY + (Math.floor(cell / grid.columns) + 0.5) * grid.cellM
        shadows.some(shadow => booleanPointInPolygon(point([x, y]), shadow))
        asked++
      }
    }
  })
  return (spent / asked) * grid.columns * grid.rows * lit.length
}

export const bench: Bench = async () => {
  const rows: BenchRow[] = []
  const atMost = (id: string, what: string, value: number, unit: string, peer: string, limit: number) =>
    rows.push({ id, what, value, unit, peer, target: `≤ ${limit}`, ok: value <= limit })
  const atLeast = (id: string, what: string, value: number, peer: string, limit: number) =>
    rows.push({ id, what, value, unit: 'times', peer, target: `≥ ${limit}`, ok: value >= limit })
  const reported = (id: string, what: string, value: number, target: string | null) =>
    rows.push({ id, what, value, unit: 'ms', peer: null, target, ok: null })

  const gaps = sunGaps()
  const span = 'latitudes 0–65, 12 months, hours with the sun above 3°'
  atMost('sun.altitude', `largest gap in altitude, ${span}`, gaps.altitudeDeg, '°', 'astronomy-engine', 0.015)
  atMost(
    'sun.azimuth',
    `largest gap in azimuth · cos(altitude), ${span}`,
    gaps.azimuthDeg,
    '°',
    'astronomy-engine',
    0.015,
  )

  const day = siteDay('2026-06-15', place.zone)
  if (!day.ok) throw new Error('no such day')
  const casters = hundredCasters()
  const exposed = exposure(slab, casters, place, day.value, 15, undefined)

  const raster = rasterRatios(exposed, casters)
  const touch = 'touching every (cell, step) once'
  atMost('sun.planes', 'bit planes of a day: 40,000 cells, 100 casters', raster.planes, 'times', touch, 1)
  atMost('sun.masks', 'bit planes and per-cell masks of a day', raster.masks, 'times', touch, 1.3)
  reported('sun.floorTime', touch, raster.floorMs, null)

  const exposureMs = medianMs(() => exposure(slab, casters, place, day.value, 15, undefined), 15)
  reported('sun.dayTime', 'whole exposure of a day, 100 casters', exposureMs, null)
  const moved = [...casters.slice(1), resolveCaster(building(box(20, -6, 5, 5), { id: 'c1' })).value]
  reported(
    'sun.moveTime',
    'exposure after one caster moved',
    medianMs(() => updateExposure(exposed, moved), 15),
    null,
  )

  const morning = exposed.sun[exposed.lit[14]!]!
  const perMeter = shadowPerMeter(morning, place.northDeg)
  const clip = slab.net.map(region => flattenRegion(region))
  const cycles = casters.flatMap(each =>
    casterShadow(each, 0, perMeter, day.value.date, undefined).flatMap(p => p.cycles),
  )
  const unionMs = medianMs(() => unionShadow(cycles, clip), 15)
  const swept = featureCollection<Polygon | MultiPolygon>(sweptPolygons(casters, perMeter))
  const turfMs = timeMs(() => union(swept))
  atLeast(
    'sun.union',
    'union of the shadows of 100 casters on a slab',
    turfMs / unionMs,
    'turf union of swept edges',
    200,
  )
  reported('sun.unionTime', 'union of the shadows of 100 casters on a slab', unionMs, null)
  const hourMs = medianMs(() => shadeAt(slab, casters, morning, place, day.value.date, undefined), 15)
  reported('sun.hourTime', 'shade of the shown hour, 100 casters', hourMs, '≤ 8, reported')

  const dayMs = medianMs(() => {
    for (const index of exposed.lit) shadeAt(slab, casters, exposed.sun[index]!, place, day.value.date, undefined)
  }, 3)
  atLeast(
    'sun.dayPolygons',
    'outlines of a day’s shade, 100 casters (peer from one step)',
    (turfMs * exposed.lit.length) / dayMs,
    'turf union of swept edges',
    1000,
  )
  const askedMs = pointInPolygonMs(exposed, casters, [8, 29, 48])
  atLeast(
    'sun.dayCells',
    'a day’s shade on every cell (peer from 3 steps and every 17th cell)',
    askedMs / exposureMs,
    'turf booleanPointInPolygon on ready-made unions',
    1000,
  )
  return rows
}
