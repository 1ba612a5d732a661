/** An L patio behind a house: 28 ft × 42 ft and a wing of 22 ft × 20 ft, two rounded corners, a fire pit, a border. */
import polygonClipping, { type Polygon } from 'polygon-clipping'
import type { Region } from '../../core/geometry/curve'
import type { PlanLayers } from '../../core/reports/planDrawing'
import type { SheetData, SheetHour, SheetPour } from '../../core/reports/sheetData'
import type { Pt } from '../../shared/document/primitives'
import { areaOf, circleOf, flatRegion, ft, regionOf, ringOf } from './shapes'

const outline = ringOf('o', [
  [0, 0],
  [50, 0],
  [50, 20, 6],
  [28, 20],
  [28, 42],
  [0, 42, 6],
])
const pit = circleOf('p', 14, 28, 2.25, -1)
const net = regionOf(outline, [pit])

const border = regionOf(
  ringOf('b', [
    [49, 0],
    [50, 0],
    [50, 20, 6],
    [28, 20],
    [28, 42],
    [0, 42, 6],
    [0, 0],
    [1, 0],
    [1, 41, 5],
    [27, 41],
    [27, 19],
    [49, 19, 5],
  ]),
)
const field = regionOf(
  ringOf('f', [
    [1, 0],
    [49, 0],
    [49, 19, 5],
    [27, 19],
    [27, 41],
    [1, 41, 5],
  ]),
  [pit],
)

const pourRegions = [
  regionOf(
    ringOf('p1', [
      [0, 20],
      [28, 20],
      [28, 42],
      [0, 42, 6],
    ]),
    [pit],
  ),
  regionOf(
    ringOf('p2', [
      [0, 0],
      [28, 0],
      [28, 20],
      [0, 20],
    ]),
  ),
  regionOf(
    ringOf('p3', [
      [28, 0],
      [50, 0],
      [50, 20, 6],
      [28, 20],
    ]),
  ),
]

const pours: SheetPour[] = pourRegions.map((region, i) => ({
  id: `pour${i + 1}`,
  number: String(i + 1),
  slabId: 's1',
  region,
  areaM2: areaOf(region),
  order: i + 1,
  day: i + 1,
  date: `2026-07-2${i + 1}`,
  concreteM3: [7.65, 7.07, 5.54][i]!,
  proposed: false,
}))

/** Shade of a wall-like block: its footprint swept by the shadow vector, in feet, cut to the slab. */
function shadeOf(dx: number, dy: number): Region[] {
  const sweep = (ring: readonly Pt[]): Polygon[] =>
    ring.map((a, i) => {
      const b = ring[(i + 1) % ring.length]!
      return [
        [
          [a[0], a[1]],
          [b[0], b[1]],
          [b[0] + dx, b[1] + dy],
          [a[0] + dx, a[1] + dy],
        ],
      ]
    })
  const house: readonly Pt[] = [
    [-4, -24],
    [54, -24],
    [54, 0],
    [-4, 0],
  ]
  const crown: readonly Pt[] = Array.from({ length: 24 }, (_, i) => {
    const a = (i * Math.PI) / 12
    return [-14 + 9 * Math.cos(a) + dx * 0.9, 27 + 9 * Math.sin(a) + dy * 0.9] as const
  })
  const flat = flatRegion(net)
  const slab: Polygon = [flat.ring, ...flat.holes].map(r => r.map(([x, y]) => [x / ft, y / ft] as [number, number]))
  const casts: Polygon[] = [...sweep(house), [crown.map(([x, y]) => [x, y] as [number, number])]]
  return polygonClipping
    .intersection(polygonClipping.union(casts[0]!, ...casts.slice(1)), slab)
    .map(polygon => polygon.map(r => r.slice(0, -1).map(([x, y]) => [x * ft, y * ft] as const)))
    .map(([ring = [], ...holes]) => ({ ring, holes }))
}

const hour = (clock: number, label: string, altitudeDeg: number, azimuthDeg: number): SheetHour => ({
  time: `2026-07-21T${String(clock).padStart(2, '0')}:00:00-05:00`,
  label,
  clockMin: clock * 60,
  altitudeDeg,
  azimuthDeg,
})
const hours = [
  hour(7, '7 am', 12.4, 70.2),
  hour(8, '8 am', 24, 79.6),
  hour(9, '9 am', 35.8, 89.9),
  hour(10, '10 am', 47.3, 102.6),
  hour(11, '11 am', 57.9, 121.1),
  hour(12, 'noon', 65.4, 151.9),
  hour(13, '1 pm', 66.1, 194.4),
  hour(14, '2 pm', 59.6, 229.9),
  hour(15, '3 pm', 49.4, 250.9),
  hour(16, '4 pm', 38, 264.8),
  hour(17, '5 pm', 26.2, 275.6),
  hour(18, '6 pm', 14.6, 285.2),
]

const vectors: Readonly<Record<string, Pt>> = {
  '8 am': [-26, 12],
  '9 am': [-15, 11],
  '10 am': [-9, 9],
  noon: [3, 7],
  '2 pm': [9, 8],
  '3 pm': [14, 9],
  '4 pm': [20, 11],
  '6 pm': [44, 20],
}

export const patio: SheetData = {
  siteName: 'Marlow Lane patio',
  siteId: 'fixture-patio',
  date: '2026-07-21',
  zone: 'America/Chicago',
  units: 'ftin',
  names: new Map(),
  place: { name: 'Behind the house', latDeg: 41.6, lonDeg: -93.6, northDeg: 55 },
  slabs: [
    {
      id: 's1',
      name: 'Patio',
      finishName: 'Ashlar, Wheat',
      levelM: 0,
      thicknessM: 0.127,
      outline,
      openings: [{ id: 'o1', kind: 'other', name: 'fire pit', ring: pit, areaM2: Math.PI * (2.25 * ft) ** 2 }],
      net: [net],
      thickened: [],
      steps: [],
      finishParts: [
        {
          id: 'b1',
          kind: 'border',
          finishName: 'Plank, Umber',
          widthM: ft,
          areaM2: areaOf(border),
          lengthM: 42.3,
          innerLengthM: 40.1,
          centerLengthM: 41.2,
          shape: [border],
        },
      ],
      field: [field],
      grossAreaM2: areaOf(regionOf(outline)),
      openingAreaM2: Math.PI * (2.25 * ft) ** 2,
      netAreaM2: areaOf(net),
      fieldAreaM2: areaOf(field),
      perimeterM: 54.51,
    },
  ],
  casters: [
    {
      id: 'c1',
      kind: 'building',
      name: 'House',
      shape: {
        form: 'rings',
        rings: [
          [
            [-4 * ft, -24 * ft],
            [54 * ft, -24 * ft],
            [54 * ft, 0],
            [-4 * ft, 0],
          ],
        ],
      },
      topM: 6.7056,
      baseM: 0,
    },
    {
      id: 'c2',
      kind: 'tree',
      name: 'Maple',
      shape: { form: 'circle', center: [-14 * ft, 27 * ft], radiusM: 9 * ft },
      topM: 9.144,
      baseM: 0,
    },
    {
      id: 'c3',
      kind: 'wall',
      name: 'Fence',
      shape: {
        form: 'line',
        points: [
          [58 * ft, 0],
          [58 * ft, 8 * ft],
          [58 * ft, 16 * ft],
          [58 * ft, 24 * ft],
        ],
      },
      topM: 1.8288,
      baseM: 0,
    },
  ],
  points: [{ id: 'pt1', name: 'back door', at: [20 * ft, 2.5 * ft] }],
  pours,
  joints: [
    {
      id: 'j1',
      slabId: 's1',
      kind: 'construction',
      pourIds: ['pour1', 'pour2'],
      from: [0, 20 * ft],
      to: [28 * ft, 20 * ft],
      lengthM: 28 * ft,
    },
    {
      id: 'j2',
      slabId: 's1',
      kind: 'construction',
      pourIds: ['pour2', 'pour3'],
      from: [28 * ft, 0],
      to: [28 * ft, 20 * ft],
      lengthM: 20 * ft,
    },
    { id: 'i1', slabId: 's1', kind: 'isolation', pourIds: [], from: [0, 0], to: [50 * ft, 0], lengthM: 50 * ft },
  ],
  hours,
  shadows: hours.flatMap(h => {
    const v = vectors[h.label]
    return v === undefined ? [] : [{ time: h.time, slabId: 's1', polygons: shadeOf(v[0], v[1]), dapple: [] }]
  }),
  slabShares: [{ id: 's1', sunShare: [0.1, 0.42, 0.61, 0.7, 0.83, 0.86, 0.85, 0.78, 0.7, 0.55, 0.3, null] }],
  pourShares: [
    { id: 'pour1', sunShare: [0.2, 0.6, 0.9, 1, 1, 1, 1, 1, 0.95, 0.8, 0.5, null] },
    { id: 'pour2', sunShare: [0.05, 0.2, 0.35, 0.45, 0.6, 0.65, 0.6, 0.5, 0.4, 0.25, 0.1, null] },
    { id: 'pour3', sunShare: [0, 0.45, 0.55, 0.6, 0.85, 0.9, 0.95, 0.8, 0.7, 0.55, 0.3, null] },
  ],
  quantities: [
    {
      id: 's1-gross',
      label: 'Slab, gross area',
      slabId: 's1',
      value: areaOf(regionOf(outline)),
      unit: 'm²',
      formula: 'area inside the outline',
      inputs: {},
      source: 'geometry',
    },
    {
      id: 's1-net',
      label: 'Net area',
      slabId: 's1',
      value: areaOf(net),
      unit: 'm²',
      formula: 'gross − openings',
      inputs: {
        gross: { value: areaOf(regionOf(outline)), unit: 'm²' },
        openings: { value: Math.PI * (2.25 * ft) ** 2, unit: 'm²' },
      },
      source: 'geometry',
    },
    {
      id: 'pour1-order',
      label: 'Concrete to order',
      slabId: 's1',
      pourId: 'pour1',
      value: 7.65,
      unit: 'm³',
      formula: 'roundUp(concrete in place × (1 + over-run), order step)',
      inputs: {
        'concrete in place': { value: 7.1, unit: 'm³' },
        'over-run': { value: 0.05, unit: '1' },
        'order step': { value: 0.1911386, unit: 'm³' },
      },
      source: 'over-run 10 % under 5 yd³, else 5 %, ½ yd³ more for a pump: common practice, no source',
    },
  ],
  problems: [
    {
      code: 'outsideRange',
      severity: 'check',
      message: 'The joint between pours 2 and 3 ends 14 ft from the house door. Keep a way in open that day.',
      values: {},
      at: { entityId: 'j2' },
    },
  ],
}

/** Everything a plan sheet can show, but for shade. */
export const fullPlan: PlanLayers = {
  pours: 'full',
  joints: true,
  finishes: true,
  casters: true,
  dimensions: true,
  shadeTimes: [],
}
