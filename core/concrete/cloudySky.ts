/** What clouds leave of the clear sky on a level plane. */
export interface LevelSun {
  /** Direct sun on the level plane (not square to the beam), W/m². */
  readonly directWm2: number
  readonly diffuseWm2: number
}

/**
 * Global falls by 1 − 0.75 n^3.4: F. Kasten and G. Czeplak, Solar Energy 24, 1980 (from memory). How the rest divides is
 * our own assumption: the diffuse share grows from the clear sky's to 1 with the square of the cloud cover, so that an
 * overcast sky casts no shadow.
 *
 * @param cloud share of the sky covered, 0…1
 */
export function cloudySky(clear: LevelSun, cloud: number): LevelSun {
  const clearGlobal = clear.directWm2 + clear.diffuseWm2
  if (clearGlobal <= 0) return { directWm2: 0, diffuseWm2: 0 }
  const global = clearGlobal * (1 - 0.75 * cloud ** 3.4)
  const clearShare = clear.diffuseWm2 / clearGlobal
  const diffuseShare = clearShare + (1 - clearShare) * cloud * cloud
  return { directWm2: global * (1 - diffuseShare), diffuseWm2: global * diffuseShare }
}
