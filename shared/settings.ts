/** Values a contractor may change, with the source of each default. A site overrides them under `settings`. */
export interface Setting<T = number> {
  readonly value: T
  readonly unit: string
  readonly source: string
}

const setting = <T>(value: T, unit: string, source: string): Setting<T> => ({ value, unit, source })
const practice = 'common practice, no source'

export const defaults = {
  capM2: setting(74.322432, 'm²', '800 ft² as the largest area stamped at one time: common practice, no source'),
  overRunSmallShare: setting(0.1, '1', 'over-run of 10 % under 5 yd³: common practice, no source'),
  overRunLargeShare: setting(0.05, '1', 'over-run of 5 % from 5 yd³: common practice, no source'),
  overRunLimitM3: setting(3.822774, 'm³', '5 yd³: common practice, no source'),
  orderStepYd3: setting(0.25, 'yd³', practice),
  orderStepM3: setting(0.25, 'm³', practice),
  pumpExtraM3: setting(0.3822774, 'm³', '½ yd³ for priming and the line of a pump: common practice, no source'),
  baseDensityKgM3: setting(2000, 'kg/m³', 'compacted crushed stone, about 125 lb/ft³: from memory'),
  shadeStepMin: setting(15, 'min', 'own choice'),
  minSunAltitudeDeg: setting(2, '°', 'own choice: below it direct sun is weak and shadows are longer than a site'),
  casterSpanStoryM: setting(3.048, 'm', '10 ft a story: common practice, no source'),
  overhangM: setting(0.4572, 'm', '18 in: common practice, no source'),
  treeLeafOpen: setting(0.35, '1', 'share of direct sun through an open crown in leaf: from memory'),
  treeLeafMedium: setting(0.2, '1', 'medium crown in leaf: from memory'),
  treeLeafDense: setting(0.08, '1', 'dense crown in leaf: from memory'),
  treeBareOpen: setting(0.7, '1', 'open crown, bare: from memory'),
  treeBareMedium: setting(0.6, '1', 'medium crown, bare: from memory'),
  treeBareDense: setting(0.5, '1', 'dense crown, bare: from memory'),
  coverNone: setting(0, '1', 'solid cover'),
  coverHalf: setting(0.5, '1', 'open slats, half the light: from memory'),
  coverMost: setting(0.8, '1', 'light fabric or wide slats: from memory'),
  // Concrete, weather and set.
  windAtSlabShare: setting(
    0.65,
    '1',
    'wind 0.5 m above the slab over wind at 10 m, (0.5/10)^(1/7): from memory; 0.5 in a sheltered yard',
  ),
  evaporationPrecautionsKgM2H: setting(0.976486, 'kg/m²h', '0.20 lb/ft²/h, precautions: ACI 305R'),
  evaporationLowBleedKgM2H: setting(
    0.488243,
    'kg/m²h',
    '0.10 lb/ft²/h for silica fume or latex: trade page, Predicting plastic shrinkage cracking in LMC overlays',
  ),
  evaporationVeryLowBleedKgM2H: setting(0.2441214, 'kg/m²h', '0.05 lb/ft²/h for very low bleed: from memory'),
  linkeTurbidity: setting(
    3.5,
    '1',
    'ordinary air: own choice within the range of Ineichen and Perez, Solar Energy 73, 2002',
  ),
  skySunny: setting(0.06, '1', 'cover of a sunny sky, 0 to 1/8: National Weather Service sky words, from memory'),
  skySome: setting(0.44, '1', 'some clouds, 3/8 to 4/8: National Weather Service sky words, from memory'),
  skyMostly: setting(0.75, '1', 'mostly cloudy, 5/8 to 7/8: National Weather Service sky words, from memory'),
  skyOvercast: setting(1, '1', 'overcast, 8/8: National Weather Service sky words, from memory'),
  concreteDensityKgM3: setting(2350, 'kg/m³', 'D. P. Bentz, NISTIR 6551, 2000, table 1'),
  concreteHeatJKgK: setting(1000, 'J/kgK', 'D. P. Bentz, NISTIR 6551, 2000, table 1'),
  concreteConductivityWMK: setting(1.5, 'W/mK', 'D. P. Bentz, NISTIR 6551, 2000, table 1'),
  thermalDepthM: setting(0.1016, 'm', '4 in at most taken as one warm body: own comparison with a layered column'),
  absorptanceLight: setting(
    0.65,
    '1',
    'share of sun a gray or light slab takes in; albedo 0.18–0.35: M. Pomerantz et al., LBNL-49283, 2003',
  ),
  absorptanceMedium: setting(0.72, '1', 'own choice between light and dark'),
  absorptanceDark: setting(0.8, '1', 'dark dry-shake: from memory'),
  emissivity: setting(0.9, '1', 'dense concrete 0.90–0.95: FHWA, Pavement Thermal Performance'),
  baseConductanceWM2K: setting(8, 'W/m²K', 'heat to a base at the mean air of the day: own assumption'),
  bleedRateKgM2H: setting(0.5, 'kg/m²h', 'own assumption'),
  bleedEndShare: setting(0.6, '1', 'bleeding ends at this share of initial set: own assumption'),
  bleedFilmKgM2: setting(0.5, 'kg/m²', 'most water standing on the slab: own assumption'),
  cementKgM3: setting(335, 'kg/m³', 'six sacks a cubic yard: own choice'),
  sackKg: setting(42.63768, 'kg', 'US sack of cement, 94 lb'),
  cementHeatJKg: setting(
    450000,
    'J/kg',
    'heat of complete hydration, A. K. Schindler, ACI Materials Journal 101, 2004: from memory',
  ),
  hydrationUltimate: setting(
    0.75,
    '1',
    'three-parameter form, A. K. Schindler, ACI Materials Journal 101, 2004: from memory',
  ),
  hydrationShape: setting(
    0.9,
    '1',
    'three-parameter form, A. K. Schindler, ACI Materials Journal 101, 2004: from memory',
  ),
  waterCementRatio: setting(0.45, '1', 'own choice'),
  activationEnergyJMol: setting(41570, 'J/mol', 'Q = 5000 K, ASTM C1074: from memory; 33,500 to 45,000 in print'),
  initialSetAt21CMin: setting(270, 'min', '4½ h at 70 °F: common practice, no source'),
  readyShare: setting(0.65, '1', 'ready to stamp, share of initial set: common practice, no source'),
  tooHardShare: setting(0.95, '1', 'too hard to stamp, share of initial set: common practice, no source'),
  scmSetFactor: setting(1, '1', 'slower or faster set of a mix with ash or slag: ask the producer'),
  minutesFromPlant: setting(30, 'min', 'common practice, no source'),
  placedOverAirK: setting(3, 'K', 'fresh concrete over the air when its temperature is not given: own assumption'),
  setSpreadLn: setting(0.15, '1', 'spread of set before any log: own assumption'),
  pourSpreadLn: setting(0.06, '1', 'spread of set from pour to pour of one mix: own assumption'),
  observerMin: setting(7, 'min', 'how closely ready and too hard are told by hand: own assumption'),
  crustPartMin: setting(10, 'min', 'top ahead of the middle by this much: crust warning, own choice'),
  rainWashableH: setting(24, 'h', 'rain harms color and release until washed: common practice, no source'),
  rainWatchChance: setting(0.2, '1', 'chance of rain to have covers ready: own choice'),
  rainNoGoChance: setting(0.5, '1', 'chance of rain while it sets that says do not pour: own choice'),
  rainNoGoMm: setting(1, 'mm', 'rain on a setting slab that spoils the print: own choice'),
} as const satisfies Record<string, Setting>

export type SettingName = keyof typeof defaults
export type SettingOverrides = Readonly<Partial<Record<SettingName, number>>>

/** The site's value of a setting, else the default. */
export const settingValue = (overrides: SettingOverrides | undefined, name: SettingName): number =>
  overrides?.[name] ?? defaults[name].value
