import type { geometryCodes, ProblemValue } from '../../shared/problem'
import { capitalize } from '../units/capitalize'
import type { Told, Wording } from './wording'

const numberOf = (value: ProblemValue | undefined): number => (typeof value === 'number' ? value : 0)

/** The length a finding carries, printed. */
const lengthOf = ({ values, print }: Told, name: string) => print.length(numberOf(values[name]))

/** The area a finding carries, printed. */
const areaOf = ({ values, print }: Told, name: string) => print.area(numberOf(values[name]))

/** Which opening is meant: "The planter", "Planter 2". */
const openingOf = ({ values: { name } }: Told): string => capitalize(String(name))

/** Findings of the geometry in trade words. */
export const geometryWordings: Record<(typeof geometryCodes)[number], Wording> = {
  pathTooShort: ({ values }) =>
    values.what === 'line'
      ? {
          message: 'A line has two points at least: this one would have only one left.',
          hint: 'Move the point, or delete the whole line.',
        }
      : {
          message: `This outline has ${values.vertices} ${values.vertices === 1 ? 'corner' : 'corners'}; it needs at least ${values.least}.`,
          hint: 'Add the missing corners, or delete the outline.',
        },
  zeroEdge: () => ({
    message: 'Two corners lie on the same spot: the edge between them has no length and is left out.',
    hint: 'Delete one of the two corners.',
  }),
  edgeCountMismatch: ({ values }) => ({
    message: `The path lists ${values.vertices} corners but ${values.edges} edges, so its edges cannot be told apart.`,
    hint: 'A closed outline has as many edges as corners; an open line has one edge fewer.',
  }),
  selfCrossing: () => ({
    message: 'The outline crosses or touches itself, so inside and outside cannot be told apart.',
    hint: 'Move the corners so that no edge crosses or touches another.',
  }),
  wrongWinding: () => ({
    message: 'The corners run the wrong way around; the shape is taken the other way.',
    hint: 'Outlines run counter-clockwise, openings clockwise.',
  }),
  roundTooLarge: told => ({
    message: `A corner radius of ${lengthOf(told, 'roundM')} does not fit between the neighboring edges; the corner stays sharp.`,
    hint: 'Use a smaller radius or longer edges.',
  }),
  riseTooLarge: told => ({
    message: `An arc with a rise of ${lengthOf(told, 'riseM')} over a chord of ${lengthOf(told, 'chordM')} closes on itself.`,
    hint: 'Draw a full circle as two half circles.',
  }),
  openingOutside: told => ({
    message:
      'outsideM2' in told.values
        ? `${openingOf(told)} reaches ${areaOf(told, 'outsideM2')} beyond the slab’s edge.`
        : `${openingOf(told)} lies outside the slab.`,
    hint: 'Move the opening inside, or draw the slab around it.',
  }),
  openingTouches: told => ({
    message: `${openingOf(told)} touches ${'otherId' in told.values ? 'another opening' : 'the slab’s edge'}; no concrete is left between them.`,
    hint: 'Leave concrete between them, or draw them as one.',
  }),
  openingsOverlap: told => ({
    message: `${openingOf(told)} overlaps another opening by ${areaOf(told, 'commonM2')}; the common part counts once.`,
    hint: 'Move one of them, or draw them as one.',
  }),
  slabsOverlap: told => ({
    message: `${told.values.name} and ${told.values.otherName} share ${areaOf(told, 'commonM2')} of ground: that concrete is counted twice.`,
    hint: 'Move an edge so that the slabs only meet.',
  }),
  borderTooWide: told => ({
    message: `A border of ${lengthOf(told, 'widthM')} is wider than the slab here; no field is left inside it. The border is left out.`,
    hint: 'Make the border narrower, or give the whole slab its finish.',
  }),
  bandOutside: told => ({
    message: `${lengthOf(told, 'outsideM')} of the band’s center line lies outside the slab; only the part inside counts.`,
    hint: 'Shorten the band, or end it at the slab’s edge.',
  }),
  insetOutside: told => ({
    message: `${areaOf(told, 'outsideM2')} of the inset lies outside the slab; only the part inside counts.`,
    hint: 'Move the inset inside the slab.',
  }),
  stepsBeyondEdge: told => ({
    message: `The steps are ${lengthOf(told, 'beyondM')} wider than what their edge has room for; they are drawn up to its end.`,
    hint: 'Make them narrower, start them nearer the first corner, or make the edge longer.',
  }),
  arcsKeptAsChords: () => ({
    message: 'Some arcs of this part are figured as short chords, at most 0.1 mm (1/256 in) from the true curve.',
  }),
}
