/** How a measure is printed in the unit system of the site. */
export interface Measures {
  /** `12′ 6½″`, under a foot `6½″`; or `3.81 m` */
  length(lengthM: number): string
  /** A thickness, a depth or a width, never split into feet below 4 ft: `18″`, `4½″`; or `457 mm` */
  size(lengthM: number): string
  /** `1,588 ft²` or `147.5 m²` */
  area(areaM2: number): string
  /** `24.5 yd³` or `18.75 m³` */
  volume(volumeM3: number): string
  /** `72 °F` or `22 °C` */
  temperature(tempC: number): string
  /** A clock time `15:00` as one reads it where it stands alone: `3:00 pm`; metric sites count to 24 */
  time(clock: string): string
}
