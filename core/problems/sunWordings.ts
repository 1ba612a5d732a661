/** The findings of sun and shade in trade words. */
import type { ProblemValue, sunCodes } from '../../shared/problem'
import type { Wording } from './wording'

const kinds: Readonly<Record<string, string>> = {
  building: 'building',
  wall: 'wall or fence',
  tree: 'tree',
  cover: 'cover',
}

/** `The building “House”` */
const named = (values: Readonly<Record<string, ProblemValue>>): string => {
  const kind = kinds[String(values.kind ?? 'building')] ?? 'shade caster'
  const name = String(values.name ?? '')
  return name === '' ? `A ${kind}` : `The ${kind} “${name}”`
}

const degrees = (value: ProblemValue | undefined): string => `${Number(value).toFixed(1)}°`

export const sunWordings: Record<(typeof sunCodes)[number], Wording> = {
  noHeight: ({ values, print }) => ({
    message: `${named(values)} has no height: its top at ${print.length(Number(values.topM))} is not above its bottom at ${print.length(Number(values.bottomM))}, so it throws no shade.`,
    hint: 'Give its height above the ground, or take it out.',
  }),
  roofFlat: ({ values }) => ({
    message: `The ${values.form} roof of ${named({ ...values, kind: 'building' })
      .replace(/^The/, 'the')
      .replace(/^A /, 'a ')} cannot be built over this footprint; its shade is that of a flat roof at the eave.`,
    hint: 'Simplify the footprint, or draw the wings as buildings of their own.',
  }),
  roofOverCourtyard: ({ values }) => ({
    message: `${named({ ...values, kind: 'building' })} has a courtyard, so its ${values.form} roof is drawn flat at the eave; the shade of the ridge is missing.`,
    hint: 'Draw each wing around the courtyard as a building of its own.',
  }),
  polarDay: ({ values }) => ({
    message: `On ${values.date} the sun stays up all day and night here.`,
  }),
  polarNight: ({ values }) => ({
    message: `On ${values.date} the sun does not rise high enough to throw shade here: at most ${degrees(values.highestDeg)} above the horizon.`,
  }),
  hourMissing: ({ values }) => ({
    message: `On ${values.date} the clocks skip ${values.time}; ${values.moved} is used instead.`,
  }),
}
