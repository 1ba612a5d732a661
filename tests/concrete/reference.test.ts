import { readFileSync } from 'node:fs'
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import {
  haurwitzGlobal,
  ineichenPerez,
  pressureShare,
  relativeAirMass,
  simplifiedSolis,
} from '../../core/concrete/clearSky'
import { airOfDay } from '../../core/concrete/dailyWeather'
import { ageRate } from '../../core/concrete/equivalentAge'
import { evaporation, evaporationUncertainty, kgM2PerLbFt2 } from '../../core/concrete/evaporation'
import { freshTemperature } from '../../core/concrete/freshTemperature'
import { mostPlacedC } from '../../core/concrete/hotChecks'
import { skyEmissivity, skyRadiation } from '../../core/concrete/skyRadiation'
import { convection } from '../../core/concrete/slabWeather'
import { leastPlacedC } from '../../core/concrete/tables/coldPlacing'
import { placingRates } from '../../core/concrete/tables/placingRates'
import {
  doseMlPerM3,
  fluidOunceMl,
  labelDelayH,
  labelDose,
  mostOnSiteMin,
  stepRetardFromC,
} from '../../core/concrete/tables/retarderDose'
import { windAtSlab } from '../../core/concrete/windAtSlab'
import { defaults, type SettingName } from '../../shared/settings'

interface Row {
  readonly id: string
  readonly what: string
  readonly inputs: string
  readonly expected: string
  readonly tolerance: string
  readonly source: string
  readonly memory: string
}

const rows = parse(readFileSync(new URL('./reference.csv', import.meta.url), 'utf8'), {
  columns: true,
  comment: '#',
  comment_no_infix: true,
}) as Row[]

const celsius = (tempF: number): number => (tempF - 32) / 1.8
const fahrenheit = (tempC: number): number => tempC * 1.8 + 32
const mph = 0.44704
const yd3 = 0.764554857984

type Inputs = Record<string, number>
/** The few inputs that are names. */
const named = <T extends string>(inputs: Inputs, name: string): T => inputs[name] as unknown as T
type Part = 'globalWm2' | 'directNormalWm2' | 'diffuseWm2'

const bands = {
  precautions: 'evaporationPrecautionsKgM2H',
  lowBleed: 'evaporationLowBleedKgM2H',
  veryLowBleed: 'evaporationVeryLowBleedKgM2H',
} as const

const freshOf = (i: Inputs): number => {
  const made = freshTemperature({
    aggregate: { massKg: i.aggregateKg!, tempC: i.aggregateC! },
    cement: { massKg: i.cementKg!, tempC: i.cementC! },
    water: { massKg: i.waterKg!, tempC: i.waterC! },
    aggregateWaterKg: 0,
    iceKg: 0,
  })
  return made.ok ? made.value.tempC : Number.NaN
}

const placing = (method: string) => placingRates.find(rate => rate.method === method)!

/** One evaluation for each kind of row; every kind must be used. */
const evaluate: Record<string, (i: Inputs) => number> = {
  evaporationLb: i =>
    evaporation({
      concreteC: celsius(i.concreteF!),
      airC: celsius(i.airF!),
      humidity: i.percent! / 100,
      windAtSlabMs: i.mph! * mph,
    }).rateLbFt2H,
  evaporationKg: i =>
    evaporation({
      concreteC: i.concreteC!,
      airC: i.airC!,
      humidity: i.percent! / 100,
      windAtSlabMs: i.kmh! / 3.6,
    }).rateKgM2H,
  bandLb: i => defaults[bands[named<keyof typeof bands>(i, 'band')]].value / kgM2PerLbFt2,
  kgPerLb: () => kgM2PerLbFt2,
  evaporationUncertainty: () => evaporationUncertainty,
  windAtSlab: i => windAtSlab({ wind10mMs: i.wind10mMs! }),
  ageMultiplier: i => 1 / ageRate(celsius(i.atF!), i.activationJMol!),
  ageMultiplierOver: i => (1 / ageRate(celsius(i.atF!), i.activationJMol!) > i.over! ? 1 : 0),
  ageRate: i => ageRate(i.atC!, i.activationJMol!, i.referenceC!),
  stepRetardF: () => fahrenheit(stepRetardFromC),
  labelDelay: i => labelDelayH[named<'leastH' | 'mostH'>(i, 'which')],
  labelDose: i => labelDose(celsius(i.airF!)) ?? 0,
  doseOz: i => (doseMlPerM3(i.ozPerCwt!, (i.lbPerYd3! * 0.45359237) / yd3) * yd3) / fluidOunceMl,
  mostOnSiteMin: () => mostOnSiteMin,
  haurwitz: i => haurwitzGlobal(i.altitudeDeg!),
  solis: i =>
    simplifiedSolis({
      altitudeDeg: 80,
      aerosol700: i.aerosol700 ?? 0.1,
      waterCm: i.waterCm ?? 1,
      pressureShare: (i.pascal ?? 101325) / 101325,
      extraterrestrialWm2: 1364,
    })[named<Part>(i, 'part')],
  ineichen: i =>
    ineichenPerez({
      altitudeDeg: 90 - i.zenithDeg!,
      airMassAbsolute: i.airMass!,
      linkeTurbidity: i.linke!,
      elevationM: i.elevationM ?? 0,
      extraterrestrialWm2: i.extraterrestrialWm2 ?? 1364,
    })[named<Part>(i, 'part')],
  airMass: i => relativeAirMass(90 - i.zenithDeg!),
  pressure: i => 101325 * pressureShare(i.elevationM!),
  skyEmissivity: i => skyEmissivity(i.dewPointC!, i.cloud!),
  skyRadiation: i => skyRadiation(i.airC!, i.dewPointC!, i.cloud!),
  setting: i => defaults[named<SettingName>(i, 'name')].value,
  settingWithin: i => {
    const { value } = defaults[named<SettingName>(i, 'name')]
    return value >= i.least! && value <= i.most! ? 1 : 0
  },
  convection: i => convection(i.windMs!),
  fresh: freshOf,
  aggregateFor1F: () => {
    const mix = { aggregateKg: 1850, cementKg: 335, waterKg: 150, cementC: 20, waterC: 20 }
    const at = (aggregateC: number): number => freshOf({ ...mix, aggregateC })
    return 1 / (at(21) - at(20))
  },
  placingYd3H: i => placing(named(i, 'method'))[named<'leastM3H' | 'mostM3H'>(i, 'which')]! / yd3,
  placingReachFt: i => placing(named(i, 'method')).reachM / 0.3048,
  airOfDay: i =>
    airOfDay(
      {
        lowC: i.lowC!,
        highC: i.highC!,
        sunriseH: i.sunriseH!,
        sunsetH: i.sunsetH!,
        highAfterNoonH: i.highAfterNoonH!,
        lowAfterSunriseH: i.lowAfterSunriseH!,
        nightDecay: i.nightDecay!,
      },
      i.atH!,
    ),
  leastPlacedF: i => fahrenheit(leastPlacedC(i.thicknessIn! * 0.0254)),
  mostPlacedF: () => fahrenheit(mostPlacedC),
}

describe('values published elsewhere', () => {
  it('has forty rows and more that do not rest on memory, and uses every kind', () => {
    expect(rows.filter(row => row.memory === '').length).toBeGreaterThanOrEqual(40)
    expect(rows.every(row => row.source !== '')).toBe(true)
    expect([...new Set(rows.map(row => row.what))].sort()).toEqual(Object.keys(evaluate).sort())
  })

  it.each(rows.map(row => [row.id, row.what, row.source + (row.memory && ` (${row.memory})`), row] as const))(
    '%s %s: %s',
    (_id, what, _source, row) => {
      const value = evaluate[what]!(JSON.parse(row.inputs) as Inputs)
      const expected = Number(row.expected)
      expect(Math.abs(value - expected), `got ${value}, expected ${expected}`).toBeLessThanOrEqual(
        Number(row.tolerance) + 1e-12,
      )
    },
  )
})
