const names = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'] as const

/** The nearest of eight winds for a bearing clockwise from true north. */
export const compassPoint = (azimuthDeg: number): string => names[((Math.round(azimuthDeg / 45) % 8) + 8) % 8]!
