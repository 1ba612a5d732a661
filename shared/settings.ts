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
} as const satisfies Record<string, Setting>

export type SettingName = keyof typeof defaults
export type SettingOverrides = Readonly<Partial<Record<SettingName, number>>>

/** The site's value of a setting, else the default. */
export const settingValue = (overrides: SettingOverrides | undefined, name: SettingName): number =>
  overrides?.[name] ?? defaults[name].value
