/** What an order of pours is judged by. One unit is about a tenth of a crew-day. */
export const orderWeights = {
  /** A working day from the first pour to the last, waiting days included. */
  day: 10,
  /** A hardened pour that the crew and its hoses go across to reach another. */
  crossing: 3,
  /** Per pair of pours, the nearer one first, times the difference of their hauls as a share of the longest: own choice. */
  nearFirst: 0.2,
  /** An hour of direct sun on a whole pour more than at its best start, from placing to its last print: own choice. */
  sunHour: 0.5,
  /** A day on which no way in and out stays usable: a plank, or a door closed: own choice. */
  waysShut: 12,
} as const
