/** A phrase as it stands at the head of a sentence or in a cell; an empty one stays empty. */
export const capitalize = (phrase: string): string => phrase.charAt(0).toUpperCase() + phrase.slice(1)
