import type { Site } from '../../shared/document/site'
import { noParts, noRows, rectangle, startDraft } from '../draft'

/** A metric site south of the equator: 12.6 × 7.2 m with a cut corner, two posts, one band; cap 60 m². */
export const metricTerrace = (): Site => {
  const draft = startDraft()
  const field = draft.id('f')
  const accent = draft.id('f')
  const slab = draft.id('s')
  const outline = draft.path([
    { at: [0, 0] },
    { at: [12.6, 0] },
    { at: [12.6, 5.4] },
    { at: [10.8, 7.2] },
    { at: [0, 7.2] },
  ])
  const post = (name: string, x: number) => ({
    id: draft.id('o'),
    name,
    kind: 'column' as const,
    path: draft.path(rectangle([x, 5.9], 0.3, 0.3, 'clockwise')),
  })
  const footprint = draft.path(rectangle([-2, -9], 16.4, 9))
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'sample-metric-terrace',
    name: 'Wattle Rise terrace',
    units: 'metric',
    place: {
      name: '5 Wattle Rise',
      latDeg: -42.8894,
      lonDeg: 147.3127,
      elevationM: 112,
      zone: 'Australia/Hobart',
      northDeg: 160,
    },
    finishes: [
      { id: field, name: 'Ashlar, bluestone', pattern: 'ashlar', color: '#6f7b85', patternDeg: 0 },
      { id: accent, name: 'Plain, cream', pattern: 'plain', color: '#ddd2b8' },
    ],
    slabs: [
      {
        ...noParts,
        id: slab,
        name: 'Terrace',
        levelM: 0.15,
        outline,
        openings: [post('Post, left', 3), post('Post, right', 7)],
        thicknessM: 0.1,
        baseDepthM: 0.1,
        finishId: field,
        bands: [
          {
            id: draft.id('n'),
            name: 'Middle band',
            line: draft.path([{ at: [6.3, 0] }, { at: [6.3, 7.2] }], 'open'),
            widthM: 0.4,
            finishId: accent,
            placed: 'withField',
          },
        ],
        againstExisting: outline.edges.slice(0, 1).map(edge => edge.id),
        slope: { towardDeg: 0, fall: 0.02 },
      },
    ],
    casters: [
      {
        id: draft.id('c'),
        name: 'House',
        kind: 'building',
        footprint,
        baseM: 0,
        eaveM: 3.1,
        overhangM: 0.45,
        roof: { form: 'gable', risePer12: 5, ridgeAlongEdge: footprint.edges[0]?.id ?? '' },
      },
      {
        id: draft.id('c'),
        name: 'Slatted cover',
        kind: 'cover',
        outline: draft.path(rectangle([2.5, 3], 5.3, 3.4)),
        undersideM: 2.7,
        topM: 2.9,
        light: 'half',
      },
      {
        id: draft.id('c'),
        name: 'Paling fence',
        kind: 'wall',
        line: [
          [15, -2],
          [15, 12],
          [-4, 12],
        ],
        baseM: 0,
        topM: 1.8,
        solidity: 0.95,
      },
    ],
    points: [{ id: draft.id('p'), name: 'Table', at: [5, 4.2], slabId: slab }],
    capacity: { capM2: 60 },
    nextId: draft.nextId(),
  }
}
