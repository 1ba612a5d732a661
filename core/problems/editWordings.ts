import type { editCodes, ProblemValue } from '../../shared/problem'
import type { Told, Wording } from './wording'

const numberOf = (value: ProblemValue | undefined): number => (typeof value === 'number' ? value : 0)

const lengthOf = ({ values, print }: Told, name: string) => print.length(numberOf(values[name]))

const countOf = (value: ProblemValue | undefined, one: string, many: string): string =>
  `${value} ${value === 1 ? one : many}`

/** Findings of edits and of measuring in the field, in trade words. */
export const editWordings: Record<(typeof editCodes)[number], Wording> = {
  entityMissing: ({ values }) => ({
    message: `There is no ${values.what} ${values.id} on this site.`,
    hint: 'It may have been deleted; choose it again on the plan.',
  }),
  nothingChosen: ({ values }) => ({
    message: `Nothing that is chosen can be ${values.done}.`,
    hint: 'Borders, steps, thickened edges, and joints and tapes held at both ends follow the edges they are on; choose the slab, its corners, or one end.',
  }),
  nothingToPaste: () => ({
    message: 'What was copied last is nothing that can be drawn here.',
    hint: 'Choose something on a plan, copy it, and paste again.',
  }),
  badMeasure: told => ({
    message: `${told.values.foundM === undefined ? told.values.found : lengthOf(told, 'foundM')} is no ${told.values.what}.`,
    hint: 'Give it a measure greater than zero.',
  }),
  radiusTooSmall: told => ({
    message: `No arc of radius ${lengthOf(told, 'radiusM')} spans this edge.`,
    hint: `Its ends need a radius of at least ${lengthOf(told, 'leastM')}.`,
  }),
  membershipsMerged: ({ values }) => ({
    message: `Two edges became one; the ${values.where} of one of them is that of both now.`,
    hint: 'Check which edges have it now.',
  }),
  removedWith: ({ values }) => ({
    message: `A ${values.what} went with what it belonged to.`,
  }),
  acceptedRemoved: ({ values }) => ({
    message: `${countOf(values.pours, 'accepted pour', 'accepted pours')} and ${countOf(values.joints, 'joint', 'joints')} went with the slab.`,
    hint: 'Undo brings them back.',
  }),
  pouredFrozen: ({ values }) => ({
    message: `Pour ${values.number} is poured or in the log; what was built is not ${values.done}.`,
    hint: 'Work on a copy of the slab instead.',
  }),
  finishInUse: ({ values }) => ({
    message: `The finish “${values.name}” is in use ${countOf(values.count, 'time', 'times')}.`,
    hint: 'Give those parts another finish first.',
  }),
  materialInUse: ({ values }) => ({
    message: `${values.name} is in the log of ${countOf(values.count, 'pour', 'pours')}; what was used stays listed.`,
    hint: 'Set its rate to 0 if no more of it is wanted.',
  }),
  lastFinish: () => ({
    message: 'A site needs at least one finish.',
    hint: 'Add another finish before deleting this one.',
  }),
  tapesFromOnePoint: () => ({
    message: 'Both tapes start from the same point.',
    hint: 'Choose two points that lie apart.',
  }),
  tapesTooShort: told => ({
    message: `The two tapes fall ${lengthOf(told, 'gapM')} short of each other: the known points are ${lengthOf(told, 'apartM')} apart.`,
    hint: 'Measure both again, and check which two points they start from.',
  }),
  tapesTooLong: told => ({
    message: `One tape runs ${lengthOf(told, 'gapM')} past the reach of the other, so the two never meet.`,
    hint: 'Measure both again, and check which two points they start from.',
  }),
  traverseOpen: told => ({
    message: `The walk around misses its start by ${lengthOf(told, 'closingM')} over ${lengthOf(told, 'walkedM')}.`,
    hint: `Measure the edges and turns again; ${lengthOf(told, 'allowedM')} can be spread over the edges.`,
  }),
  traverseShort: ({ values }) => ({
    message: `A walk around needs at least ${values.least} edges; there are ${values.legs}.`,
    hint: 'Go on until you are back at the first corner.',
  }),
  turnsOpen: ({ values }) => ({
    message: `The turns add up to ${Number(numberOf(values.turnsDeg).toFixed(1))}°; all the way around they make 360°.`,
    hint: `Measure the turns again, and left or right of each; ${numberOf(values.allowedDeg)}° can be shared by the corners.`,
  }),
  strokeTooShort: told => ({
    message: `The stroke is ${lengthOf(told, 'lengthM')} long: too short to become an edge.`,
    hint: 'Draw a longer stroke.',
  }),
  strokeFlat: () => ({
    message: 'The stroke encloses next to nothing.',
    hint: 'Draw around the outline, back to where it began.',
  }),
  notFourCorners: ({ values }) => ({
    message: `Squareness by diagonals needs four corners; this outline has ${values.vertices}.`,
    hint: 'Measure its corners by tape ties instead.',
  }),
  arcsKept: told => ({
    message:
      told.values.arcs === 1
        ? `The corners are square; the arc keeps its rise of ${lengthOf(told, 'mostM')}.`
        : `The corners are square; the ${told.values.arcs} arcs keep their rises, ${
            told.values.leastM === told.values.mostM
              ? `${lengthOf(told, 'mostM')} each`
              : `${lengthOf(told, 'leastM')} to ${lengthOf(told, 'mostM')}`
          }.`,
    hint: 'A rise of 0 makes an edge straight.',
  }),
  leavesAboveTop: told => ({
    message: `The lowest leaves would hang ${lengthOf(told, 'leavesM')} above the ground, and the tree is only ${lengthOf(told, 'heightM')} high.`,
    hint: 'Set the other of the two first.',
  }),
  sunTooLow: ({ values }) => ({
    message:
      numberOf(values.altitudeDeg) < 0
        ? 'The sun is below the horizon then: there is no shadow to measure by.'
        : `The sun stands ${Number(numberOf(values.altitudeDeg).toFixed(1))}° high then: too low to measure by a shadow.`,
    hint: 'Take the shadow when the sun is higher.',
  }),
  shadowTooShort: told => ({
    message: `A shadow of ${lengthOf(told, 'lengthM')} is too short to take a direction from.`,
    hint: 'Use a longer string, or wait until the shadow is longer.',
  }),
  shadeNotExplained: () => ({
    message: 'No height, overhang or north within reason puts the shade line there at that time.',
    hint: 'Check the marked place and the clock time; something that is not on the plan may throw this shade.',
  }),
}
