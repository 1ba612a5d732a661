declare module 'polylabel' {
  /** The point of a polygon (rings, outer first) farthest from its edges, with its distance. */
  export default function polylabel(
    polygon: readonly (readonly (readonly number[])[])[],
    precision?: number,
  ): number[] & { distance: number }
}
