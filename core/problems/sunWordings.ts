/** The findings of sun and shade in trade words. */

import type { ProblemValue, sunCodes } from '../../shared/problem'
import { capitalize } from '../units/capitalize'
import { printNumber } from '../units/printNumber'
import type { Wording } from './wording'

const kinds: Readonly<Record<string, string>> = {
  building: 'building',
  wall: 'wall or fence',
  tree: 'tree',
  cover: 'cover',
}

/** `the building “House”`; without a name `a building`. */
const named = ({ kind = 'building', name }: Readonly<Record<string, ProblemValue>>): string => {
  const word = kinds[kind] ?? 'shade caster'
  return name === undefined || name === '' ? `a ${word}` : `the ${word} “${name}”`
}

export const sunWordings: Record<(typeof sunCodes)[number], Wording> = {
  noHeight: ({ values, print }) => ({
    message: `${capitalize(named(values))} has no height: its top at ${print.length(Number(values.topM))} is not above its bottom at ${print.length(Number(values.bottomM))}, so it throws no shade.`,
    hint: 'Give its height above the ground, or take it out.',
  }),
  roofFlat: ({ values }) => ({
    message: `The ${values.form} roof of ${named(values)} cannot be worked out over this footprint; its shade is that of a flat roof at the eave.`,
    hint: 'Simplify the footprint, or draw the wings as buildings of their own.',
  }),
  roofOverCourtyard: ({ values }) => ({
    message: `${capitalize(named(values))} has a courtyard, so its ${values.form} roof is drawn flat at the eave; the shade of the ridge is missing.`,
    hint: 'Draw each wing around the courtyard as a building of its own.',
  }),
  courtyardOutside: ({ values }) => ({
    message: `A courtyard of ${named(values)} reaches beyond its walls or into another courtyard; only what lies inside the walls is open to the sun.`,
    hint: 'Draw the courtyard inside the footprint.',
  }),
  polarDay: ({ values }) => ({
    message: `On ${values.date} the sun stays up all day and night here.`,
  }),
  polarNight: ({ values }) => ({
    message:
      Number(values.highestDeg) < 0
        ? `On ${values.date} the sun does not rise here.`
        : `On ${values.date} the sun stays too low to throw shade here: at most ${printNumber(Number(values.highestDeg), 1)}° above the horizon.`,
  }),
  hourMissing: ({ values }) => ({
    message: `On ${values.date} the clocks skip ${values.time}; ${values.moved} is used instead.`,
  }),
}
