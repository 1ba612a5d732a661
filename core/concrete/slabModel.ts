/** What the slab and its mix bring to the heat balance: one flat object of numbers, made once a plan. */
import type { Mix } from '../../shared/document/day'
import { type SettingOverrides, settingValue } from '../../shared/settings'

export interface SlabModel {
  readonly thicknessM: number
  /** Depth that warms as one body: min(thickness, setting `thermalDepthM`). */
  readonly depthM: number
  /** J/m³K */
  readonly volumeHeatJM3K: number
  readonly conductivityWMK: number
  readonly absorptance: number
  readonly emissivity: number
  readonly baseWM2K: number
  /** kg/m²s while the mix bleeds. */
  readonly bleedKgM2S: number
  readonly bleedEndAgeH: number
  readonly bleedFilmKgM2: number
  readonly activationJMol: number
  /** J/m³ at complete hydration of all cement. */
  readonly hydrationJM3: number
  readonly hydrationUltimate: number
  readonly hydrationShape: number
  /** τ of the three-parameter form, hours at 70 °F. */
  readonly hydrationTimeH: number
}

/** 1 yd³, exact. */
const cubicYardM3 = 0.764554857984

const absorptanceOf = { light: 'absorptanceLight', medium: 'absorptanceMedium', dark: 'absorptanceDark' } as const

/** Initial set at 70 °F from batching, hours: the mix's own, else the setting; ash or slag as a factor and as minutes. */
export const initialSetHours = (mix: Mix, settings?: SettingOverrides): number =>
  ((mix.initialSetAt21CMin ?? settingValue(settings, 'initialSetAt21CMin')) * settingValue(settings, 'scmSetFactor') +
    (mix.setsLaterMin ?? 0)) /
  60

/**
 * τ is tied to the setting time, so that hydration at initial set is 0.15 w/c (A. K. Schindler, ACI Materials Journal
 * 101, 2004: from memory): τ = t·(ln(αu/(0.15 w/c)))^(1/β).
 */
export function slabModel(mix: Mix, thicknessM: number, settings?: SettingOverrides): SlabModel {
  const value = (name: Parameters<typeof settingValue>[1]): number => settingValue(settings, name)
  const setH = initialSetHours(mix, settings)
  const cementKgM3 =
    mix.sacksPerYd3 === undefined ? value('cementKgM3') : (mix.sacksPerYd3 * value('sackKg')) / cubicYardM3
  const atInitialSet = 0.15 * value('waterCementRatio')
  return {
    thicknessM,
    depthM: Math.min(thicknessM, value('thermalDepthM')),
    volumeHeatJM3K: value('concreteDensityKgM3') * value('concreteHeatJKgK'),
    conductivityWMK: value('concreteConductivityWMK'),
    absorptance: value(absorptanceOf[mix.color ?? 'light']),
    emissivity: value('emissivity'),
    baseWM2K: value('baseConductanceWM2K'),
    bleedKgM2S: value('bleedRateKgM2H') / 3600,
    bleedEndAgeH: value('bleedEndShare') * setH,
    bleedFilmKgM2: value('bleedFilmKgM2'),
    activationJMol: value('activationEnergyJMol'),
    hydrationJM3: cementKgM3 * value('cementHeatJKg'),
    hydrationUltimate: value('hydrationUltimate'),
    hydrationShape: value('hydrationShape'),
    hydrationTimeH: setH * Math.log(value('hydrationUltimate') / atInitialSet) ** (1 / value('hydrationShape')),
  }
}

/**
 * Degree of hydration α = αu·exp(−(τ/te)^β) at an equivalent age in hours at 70 °F. Source: three-parameter form,
 * A. K. Schindler, ACI Materials Journal 101, 2004 (from memory).
 */
export const hydrationDegree = (ageH: number, model: SlabModel): number =>
  ageH <= 0 ? 0 : model.hydrationUltimate * Math.exp(-((model.hydrationTimeH / ageH) ** model.hydrationShape))

/** dα/dte, 1/h at 70 °F. */
export function hydrationPace(ageH: number, model: SlabModel): number {
  if (ageH < 1e-3) return 0
  const x = (model.hydrationTimeH / ageH) ** model.hydrationShape
  return (model.hydrationUltimate * Math.exp(-x) * x * model.hydrationShape) / ageH
}
