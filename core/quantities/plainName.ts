/** A name as an input of a formula, which must hold no sign of it. */
export const plainName = (name: string): string =>
  name
    .replace(/[+−×÷(),]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim() || 'slab'
