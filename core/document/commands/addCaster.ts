/** What throws shade. Heights are asked above the ground; the document keeps elevations. */
import type { Cover, Roof, Tree } from '../../../shared/document/caster'
import type { Pt } from '../../../shared/document/primitives'
import { settingValue } from '../../../shared/settings'
import { drawShape, type Shape } from './drawShape'
import { type Command, editSite } from './editSite'

export interface NewBuilding {
  readonly name: string
  readonly footprint: Shape
  /** Elevation of the ground at its foot; 0 = the site datum. */
  readonly baseM?: number
  readonly height: { readonly stories: number } | { readonly eaveAboveGroundM: number }
  readonly overhangM?: number
  /** The ridge of a gable runs along the footprint edge that leaves corner `alongEdge` of the drawn shape. */
  readonly roof:
    | { readonly form: 'flat' }
    | { readonly form: 'gable' | 'hip'; readonly risePer12: number; readonly alongEdge: number }
}

export const addBuilding =
  ({ name, footprint, baseM = 0, height, overhangM, roof }: NewBuilding): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const id = edit.make('c')
      const path = drawShape(edit, footprint, 'counterClockwise')
      const story = settingValue(site.settings, 'casterSpanStoryM')
      const aboveM = 'stories' in height ? height.stories * story : height.eaveAboveGroundM
      const along = roof.form === 'flat' ? undefined : path.edges[roof.alongEdge]?.id
      if (roof.form !== 'flat' && along === undefined)
        return {
          code: 'badMeasure',
          severity: 'stop',
          values: { found: roof.alongEdge, what: 'edge of the footprint' },
        }
      const form: Roof =
        roof.form === 'flat' || along === undefined
          ? { form: 'flat' }
          : { form: roof.form, risePer12: roof.risePer12, ridgeAlongEdge: along }
      draft.casters.push({
        id,
        name,
        kind: 'building',
        footprint: path,
        baseM,
        eaveM: baseM + aboveM,
        overhangM: overhangM ?? settingValue(site.settings, 'overhangM'),
        roof: form,
      })
      return undefined
    })

export interface NewWall {
  readonly name: string
  readonly line: readonly Pt[]
  readonly baseM?: number
  readonly heightM: number
  /** 1 = nothing shines through. */
  readonly solidity?: number
}

export const addWall =
  ({ name, line, baseM = 0, heightM, solidity = 1 }: NewWall): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const points = line.map(([x, y]): Pt => [x, y])
      draft.casters.push({
        id: edit.make('c'),
        name,
        kind: 'wall',
        line: points,
        baseM,
        topM: baseM + heightM,
        solidity,
      })
      return undefined
    })

export interface NewTree {
  readonly name: string
  readonly at: Pt
  readonly baseM?: number
  readonly heightM: number
  /** Height of the lowest leaves above the ground. */
  readonly trunkHeightM: number
  readonly crownRadiusM: number
  readonly density: Tree['density']
  readonly leaves: Tree['leaves']
}

export const addTree =
  ({ name, at, baseM = 0, heightM, trunkHeightM, crownRadiusM, density, leaves }: NewTree): Command =>
  site =>
    editSite(site, (draft, edit) => {
      draft.casters.push({
        id: edit.make('c'),
        name,
        kind: 'tree',
        at: [at[0], at[1]],
        baseM,
        trunkM: baseM + trunkHeightM,
        topM: baseM + heightM,
        crownRadiusM,
        density,
        leaves,
      })
      return undefined
    })

export interface NewCover {
  readonly name: string
  readonly outline: Shape
  /** Elevation of the ground below it. */
  readonly baseM?: number
  readonly undersideAboveGroundM: number
  readonly depthM: number
  readonly light: Cover['light']
}

export const addCover =
  ({ name, outline, baseM = 0, undersideAboveGroundM, depthM, light }: NewCover): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const undersideM = baseM + undersideAboveGroundM
      draft.casters.push({
        id: edit.make('c'),
        name,
        kind: 'cover',
        outline: drawShape(edit, outline, 'counterClockwise'),
        undersideM,
        topM: undersideM + depthM,
        light,
      })
      return undefined
    })
