/** What the screen may ask for besides what every plan holds. */
export const screenExtras = ['sunMaps', 'proposals', 'capacityMap', 'setMaps'] as const
export type ScreenExtra = (typeof screenExtras)[number]
