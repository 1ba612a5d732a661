/** A finger is what mostly points here: nothing hovers, and keys have to be brought up. */
export const isFinger = (): boolean => globalThis.matchMedia?.('(pointer: coarse)').matches ?? false

const underFinger: readonly (readonly [RegExp, string])[] = [
  [/\bclicked\b/g, 'tapped'],
  [/\bclick\b/g, 'tap'],
  [/\bClick\b/g, 'Tap'],
  [/\bEnter closes it\b/g, '“Close it” closes it'],
  [/\bEnter leads\b/g, '“Close it” leads'],
  [/(?<=points\. )Enter ends it\b/g, '“End it here” ends it'],
  [/\bEnter sets the border\b/g, '“Set the border” sets it'],
  [/\bHold Alt\b[^.]*\./g, ''],
]

/** What is asked of the hand, in the words of the hand that is there. */
export const handWords = (words: string): string =>
  isFinger() ? underFinger.reduce((told, [of, to]) => told.replace(of, to), words) : words
