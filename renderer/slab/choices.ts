/** Words of what can be chosen in the slab stage. */
import type { Caster, Roof } from '../../shared/document/caster'
import type { Finish } from '../../shared/document/materials'
import type { Placed, PoolEdge } from '../../shared/document/slab'
import { type Form, furnitureKinds, type Options, obstacleKinds, openingKinds } from '../editor/actions/actions'

type Choices<T extends string> = readonly (readonly [T, string])[]

export const formChoices: Choices<Form> = [
  ['corners', 'By corners'],
  ['rectangle', 'Rectangle'],
  ['base', 'Rectangle on a base line'],
  ['circle', 'Circle'],
  ['freehand', 'Freehand'],
]
export const edgeChoices: Choices<Options['edge']> = [
  ['straight', 'Straight'],
  ['arc', 'Arc'],
]
export const placedChoices: Choices<Placed> = [
  ['withField', 'With the field'],
  ['before', 'Poured first'],
  ['after', 'Poured last'],
  ['sawnLater', 'Sawn and colored later'],
]
export const poolChoices: Choices<PoolEdge> = [
  ['cantilevered', 'Cantilevered, formed in place'],
  ['setCoping', 'Set coping'],
  ['existing', 'Existing edge'],
]
const entries = <T extends string>(words: Readonly<Record<T, string>>): Choices<T> =>
  (Object.entries(words) as [T, string][]).map(([key, word]) => [key, word] as const)

export const openingChoices = entries(openingKinds)
export const obstacleChoices = entries(obstacleKinds)
export const inSlabChoices: Choices<Options['inSlab']> = [
  ...openingChoices,
  ...obstacleChoices.filter(([kind]) => kind !== 'other'),
]
export const furnitureChoices = entries(furnitureKinds)
export const tapeChoices: Choices<Options['tape']> = [
  ['tie', 'Tie a point'],
  ['dimension', 'Dimension'],
]
export const noteChoices: Choices<Options['noteKind']> = [
  ['note', 'Note'],
  ['sunPoint', 'Marked point, for its sun'],
]
export const stripChoices: Choices<Options['strip']> = [
  ['border', 'Along edges'],
  ['band', 'Band on a line'],
  ['inset', 'Inset'],
]
export const roofChoices: Choices<Roof['form']> = [
  ['flat', 'Flat'],
  ['gable', 'Gable'],
  ['hip', 'Hip'],
]
export const densityChoices: Choices<Extract<Caster, { kind: 'tree' }>['density']> = [
  ['open', 'Open'],
  ['medium', 'Medium'],
  ['dense', 'Dense'],
]
export const lightChoices: Choices<Options['light']> = [
  ['none', 'No sun comes through'],
  ['half', 'Half comes through'],
  ['most', 'Most comes through'],
]
export const wishChoices: Choices<Options['wish']> = [
  ['required', 'A joint here'],
  ['forbiddenLine', 'No joint across this line'],
  ['forbiddenArea', 'No joint in this area'],
  ['direction', 'Joints along a direction'],
]
export const accessChoices: Choices<Options['access']> = [
  ['truck', 'Truck spot'],
  ['pump', 'Pump spot'],
  ['washout', 'Washout'],
  ['way', 'Way in and out'],
  ['noGo', 'Area to keep off'],
]
export const patternChoices: Choices<Finish['pattern']> = [
  ['ashlar', 'Ashlar'],
  ['runningBond', 'Running bond'],
  ['flagstone', 'Flagstone'],
  ['cobble', 'Cobble'],
  ['plank', 'Plank'],
  ['seamless', 'Seamless texture'],
  ['broom', 'Broom'],
  ['plain', 'Plain'],
]
export const finishChoices = (finishes: readonly Finish[]): Choices<string> =>
  finishes.map(({ id, name }) => [id, name] as const)
