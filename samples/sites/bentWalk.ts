import { feetToMeters as ft, inchesToMeters as inch, squareFeetToM2 } from '../../core/units/convert'
import type { Site } from '../../shared/document/site'
import { noParts, noRows, rectangle, startDraft } from '../draft'

/** Center line of the walk in feet: three straight runs, two bends of 45°. */
export const walkRunsFt = [24, 20, 18] as const

/** A walk 4 ft wide from a stoop to the drive. Mitered on both sides, its area is width × length of the center line. */
export const bentWalk = (): Site => {
  const draft = startDraft()
  const field = draft.id('f')
  const slab = draft.id('s')
  const [up, slant, across] = walkRunsFt
  const half = 2
  const step = slant * Math.SQRT1_2
  // Half a 45° bend shifts a mitered corner along its run by half the width times tan 22.5°.
  const shift = half * Math.tan(Math.PI / 8)
  const outline = draft.path([
    { at: [ft(-half), 0] },
    { at: [ft(half), 0] },
    { at: [ft(half), ft(up - shift)] },
    { at: [ft(step + shift), ft(up + step - half)] },
    { at: [ft(step + across), ft(up + step - half)] },
    { at: [ft(step + across), ft(up + step + half)] },
    { at: [ft(step - shift), ft(up + step + half)] },
    { at: [ft(-half), ft(up + shift)] },
  ])
  const footprint = draft.path(rectangle([ft(-30), ft(-26)], ft(40), ft(26)))
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'sample-bent-walk',
    name: 'Fern Hollow walk',
    units: 'ftin',
    place: {
      name: '22 Fern Hollow',
      latDeg: 47.5631,
      lonDeg: -122.1498,
      elevationM: 94,
      zone: 'America/Los_Angeles',
      northDeg: 75,
    },
    finishes: [{ id: field, name: 'Plank, cedar', pattern: 'plank', color: '#9b6b45', patternDeg: 45 }],
    slabs: [
      {
        ...noParts,
        id: slab,
        name: 'Walk',
        levelM: 0,
        outline,
        thicknessM: inch(4),
        baseDepthM: inch(3),
        baseDepths: {
          points: [
            { at: [0, ft(4)], depthM: inch(8.5) },
            { at: [ft(6), ft(30)], depthM: inch(9) },
            { at: [ft(26), ft(38)], depthM: inch(8) },
          ],
        },
        finishId: field,
        againstExisting: outline.edges.filter((_, i) => i === 0 || i === 4).map(edge => edge.id),
        slope: { towardDeg: 90, fall: 0.015 },
      },
    ],
    casters: [
      {
        id: draft.id('c'),
        name: 'House',
        kind: 'building',
        footprint,
        baseM: ft(1),
        eaveM: ft(19),
        overhangM: inch(24),
        roof: { form: 'gable', risePer12: 8, ridgeAlongEdge: footprint.edges[0]?.id ?? '' },
      },
      {
        id: draft.id('c'),
        name: 'Douglas fir',
        kind: 'tree',
        at: [ft(-14), ft(34)],
        baseM: ft(0.5),
        trunkM: ft(8),
        topM: ft(52),
        crownRadiusM: ft(11),
        density: 'dense',
        leaves: 'evergreen',
      },
    ],
    points: [{ id: draft.id('p'), name: 'First bend', at: [0, ft(24)], slabId: slab }],
    capacity: { capM2: squareFeetToM2(800) },
    nextId: draft.nextId(),
  }
}
