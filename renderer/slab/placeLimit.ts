/** A place cannot be farther off than this. */
export const farthestM = 10_000
