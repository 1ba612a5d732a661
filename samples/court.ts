import { feetToMeters as ft, inchesToMeters as inch } from '../core/units/convert'
import type { Tree } from '../shared/document/caster'
import type { Site } from '../shared/document/site'
import type { Slab } from '../shared/document/slab'
import { type Draft, noParts, rectangle } from './draft'

/** Lower left corners and sides of the planters in feet: 400 ft² in all, so that 124 × 100 ft leave 12,000 ft². */
export const courtFt = {
  width: 124,
  depth: 100,
  planters: [
    { at: [24, 24], side: 8 },
    { at: [92, 24], side: 8 },
    { at: [24, 68], side: 8 },
    { at: [92, 68], side: 8 },
    { at: [56, 44], side: 12 },
  ],
  planterBorder: 1,
  band: 3,
} as const

/** The court's slab and its finishes: planters with borders, four bands across. */
export const drawCourt = (draft: Draft): { readonly slab: Slab; readonly finishes: Site['finishes'] } => {
  const field = draft.id('f')
  const accent = draft.id('f')
  const id = draft.id('s')
  const outline = draft.path(rectangle([0, 0], ft(courtFt.width), ft(courtFt.depth)))
  const openings = courtFt.planters.map(({ at: [x, y], side }, i) => ({
    id: draft.id('o'),
    name: `Planter ${i + 1}`,
    kind: 'planter' as const,
    path: draft.path(rectangle([ft(x), ft(y)], ft(side), ft(side), 'clockwise')),
  }))
  const borders = openings.map(({ name, path }) => ({
    id: draft.id('b'),
    name: `${name} border`,
    pathId: path.id,
    edges: 'all' as const,
    widthM: ft(courtFt.planterBorder),
    finishId: accent,
    placed: 'withField' as const,
  }))
  const band = (name: string, from: readonly [number, number], to: readonly [number, number]) => ({
    id: draft.id('n'),
    name,
    line: draft.path([{ at: [ft(from[0]), ft(from[1])] }, { at: [ft(to[0]), ft(to[1])] }], 'open'),
    widthM: ft(courtFt.band),
    finishId: accent,
    placed: 'withField' as const,
  })
  const slab: Slab = {
    ...noParts,
    id,
    name: 'Court',
    levelM: 0,
    outline,
    openings,
    thicknessM: inch(5),
    baseDepthM: inch(6),
    finishId: field,
    borders,
    bands: [
      band('West band', [41, 0], [41, 100]),
      band('East band', [83, 0], [83, 100]),
      band('South band', [0, 38], [124, 38]),
      band('North band', [0, 62], [124, 62]),
    ],
    againstExisting: outline.edges.slice(1).map(edge => edge.id),
    slope: { towardDeg: 180, fall: 0.01 },
  }
  return {
    slab,
    finishes: [
      { id: field, name: 'Running bond, sand', pattern: 'runningBond', color: '#c4b08c', patternDeg: 0 },
      { id: accent, name: 'Broom, natural', pattern: 'broom', color: '#a7a39a' },
    ],
  }
}

/** A shade tree from figures in feet. */
export const drawTree = (
  draft: Draft,
  name: string,
  [xFt, yFt]: readonly [number, number],
  heightFt: number,
  crownRadiusFt: number,
  density: Tree['density'] = 'medium',
): Tree => ({
  id: draft.id('c'),
  name,
  kind: 'tree',
  at: [ft(xFt), ft(yFt)],
  baseM: 0,
  trunkM: ft(heightFt * 0.25),
  topM: ft(heightFt),
  crownRadiusM: ft(crownRadiusFt),
  density,
  leaves: { from: '04-15', to: '11-05' },
})
