import { feetToMeters as ft, inchesToMeters as inch, squareFeetToM2 } from '../../core/units/convert'
import type { Site } from '../../shared/document/site'
import { noParts, noRows, startDraft } from '../draft'

export const roundCourtFt = { radius: 14, inset: 4, border: 1.5 } as const

/** A circle of 14 ft radius, an 18 in border, a round inset of 4 ft radius in the middle. */
export const roundCourt = (): Site => {
  const draft = startDraft()
  const field = draft.id('f')
  const edging = draft.id('f')
  const center = draft.id('f')
  const slab = draft.id('s')
  const outline = draft.circle([0, 0], ft(roundCourtFt.radius), 'counterClockwise')
  const tree = (name: string, xFt: number, yFt: number) => ({
    id: draft.id('c'),
    name,
    kind: 'tree' as const,
    at: [ft(xFt), ft(yFt)] as const,
    baseM: 0,
    trunkM: ft(7),
    topM: ft(30),
    crownRadiusM: ft(11),
    density: 'dense' as const,
    leaves: { from: '04-10', to: '11-10' },
  })
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'sample-round-court',
    name: 'Linden Park round court',
    units: 'ftin',
    place: {
      name: 'Linden Park',
      latDeg: 38.2094,
      lonDeg: -85.6831,
      elevationM: 148,
      zone: 'America/Kentucky/Louisville',
      northDeg: 0,
    },
    finishes: [
      { id: field, name: 'Cobble, fan, granite', pattern: 'cobble', color: '#87837d', patternDeg: 0 },
      { id: edging, name: 'Plain, charcoal', pattern: 'plain', color: '#4b4a48' },
      { id: center, name: 'Flagstone, rose', pattern: 'flagstone', color: '#b08a7a' },
    ],
    slabs: [
      {
        ...noParts,
        id: slab,
        name: 'Court',
        levelM: 0,
        outline,
        thicknessM: inch(4),
        baseDepthM: inch(4),
        finishId: field,
        borders: [
          {
            id: draft.id('b'),
            name: '18 in border',
            pathId: outline.id,
            edges: 'all',
            widthM: ft(roundCourtFt.border),
            finishId: edging,
            placed: 'withField',
          },
        ],
        insets: [
          {
            id: draft.id('i'),
            name: 'Center stone',
            path: draft.circle([0, 0], ft(roundCourtFt.inset), 'counterClockwise'),
            finishId: center,
            placed: 'withField',
          },
        ],
      },
    ],
    casters: [tree('Linden, east', 26, 4), tree('Linden, west', -25, -6), tree('Linden, south', 3, -27)],
    points: [{ id: draft.id('p'), name: 'Center stone', at: [0, 0], slabId: slab }],
    capacity: { capM2: squareFeetToM2(800) },
    nextId: draft.nextId(),
  }
}
