/** The findings of pours and construction joints in trade words. */
import type { ProblemValue, pourCodes } from '../../shared/problem'
import type { Measures } from '../units/measures'
import type { Wording } from './wording'

const count = (n: number): string => (n === 1 ? '1 pour' : `${n} pours`)

/** The largest area of one pour, and what makes it that. */
function capWords({ capM2, rule, hands }: Readonly<Record<string, ProblemValue>>, print: Measures): string {
  const area = print.area(Number(capM2))
  if (rule === 'crewAndWeather') return `the ${area} that these ${hands} hands finish at one time in this weather`
  return rule === 'userCap' ? `the ${area} you set as the largest pour` : `the ${area} of common practice`
}

/** Where a split of what is neither poured nor locked keeps the wish, it is offered as a repair. */
const again = ({ held }: Readonly<Record<string, ProblemValue>>, otherwise: string): string =>
  held === 'lock'
    ? `Unlock what is locked there, or ${otherwise}.`
    : `Take the repair offered beside the pours, where a new split keeps what was asked, or ${otherwise}.`

export const pourWordings: Record<(typeof pourCodes)[number], Wording> = {
  capacityTooSmall: ({ values, print }) => ({
    message: `The largest area to stamp at one time, ${print.area(Number(values.capM2))}, is too small for this slab: a pour needs at least ${print.area(Number(values.leastM2))} here.`,
    hint: 'Raise the area the crew can stamp at one time.',
  }),
  tooFewPours: ({ values, print }) => ({
    message: `${count(Number(values.asked))} cannot do: at ${print.area(Number(values.capM2))} a pour this part needs ${count(Number(values.needed))}.`,
    hint: 'Ask for more pours, or raise the area the crew can stamp at one time.',
  }),
  noCutFound: ({ values, print }) => ({
    message: `No joints were found that split these ${print.area(Number(values.areaM2))} into pours of at most ${print.area(Number(values.capM2))}.`,
    hint: 'Allow joints in more places or directions, or raise the area the crew can stamp at one time.',
  }),
  noLanes: ({ values }) => {
    if (values.why === 'worse')
      return {
        message: 'No lanes: strips one strike-off wide would be no better in any figure than a split shown here.',
        hint: 'Nothing has to be done.',
      }
    return values.why === 'wishes'
      ? {
          message: 'No lanes: their joints would lie where no joint may be, or leave a pour narrower than asked for.',
          hint: 'Take away lines or areas without joints, or ask for another direction, to see a split in lanes.',
        }
      : {
          message: 'No lanes: a strip one strike-off wide would be cut in two by the shape of the slab, or under 4 ft.',
          hint: 'Lanes need a shape that parallel strips cross in one stretch.',
        }
  },
  requiredMisses: () => ({
    message: 'A required joint does not cross the slab: it divides nothing.',
    hint: 'Draw it from edge to edge across the slab, or delete it.',
  }),
  requiredCarriedOn: () => ({
    message: 'A required joint stops inside the slab; it was carried on to the next edge or required joint.',
    hint: 'Draw it to where it should end.',
  }),
  requiredOpen: () => ({
    message: 'A required joint ends inside a pour and divides nothing there.',
    hint: 'Draw its end to an edge or to another required joint.',
  }),
  requiredCross: () => ({
    message: 'Two required joints cross here, so that four pours meet at one point.',
    hint: 'Let one of them stop at the other, or move its far half to one side.',
  }),
  requiredSmall: ({ values, print }) => ({
    message: `Required joints cut off a piece of ${print.area(Number(values.areaM2))}, ${print.length(Number(values.widthM))} wide: too narrow for a mat and a finisher.`,
    hint: `Move the joint so that the piece is at least ${print.length(Number(values.leastM))} wide.`,
  }),
  requiredForbidden: () => ({
    message: 'A required joint runs where no joint may lie. It was kept.',
    hint: 'Move the joint, or take away the line or area without joints.',
  }),
  noJointAllowed: ({ values, print }) => ({
    message:
      Number(values.keptM2) > 0
        ? `Ground without joints keeps ${print.area(Number(values.keptM2))} in one pour; the crew can stamp at most ${print.area(Number(values.capM2))} at one time.`
        : `No way was found to split these ${print.area(Number(values.areaM2))} into pours of at most ${print.area(Number(values.capM2))} around the lines and areas without joints.`,
    hint:
      values.wishId === ''
        ? 'Make the lines and areas without joints smaller or take some away, or raise the area the crew can stamp at one time.'
        : 'Make the line or area without joints marked here smaller or take it away, or raise the area the crew can stamp at one time.',
  }),
  narrowerThanWished: ({ values, print }) => ({
    message: `No split was found that keeps every pour at least ${print.length(Number(values.leastM))} wide; the narrowest is ${print.length(Number(values.widthM))}.`,
    hint: 'Ask for a smaller least width, move required joints, or raise the area the crew can stamp at one time.',
  }),
  poursNarrow: ({ values, print }) => ({
    message:
      Number(values.count) === 1
        ? `${values.slab}: a pour is ${print.length(Number(values.widthM))} wide, less than the ${print.length(Number(values.leastM))} a mat and a kneeling finisher take.`
        : `${values.slab}: ${values.count} pours are less than the ${print.length(Number(values.leastM))} wide that a mat and a kneeling finisher take; the narrowest is ${print.length(Number(values.widthM))}.`,
    hint: 'Raise the largest pour, or move the joints.',
  }),
  wishesAddPours: ({ values }) => ({
    message: `What you asked of the joints takes ${count(Number(values.pours))}; by its area this part needs ${count(Number(values.needed))}.`,
    hint: 'Move a required joint or a line or area without joints to save a pour.',
  }),
  slabInPieces: ({ values }) => ({
    message: `This slab is in ${values.pieces} pieces; each is split on its own, and no joint runs between them.`,
  }),
  poursMerged: ({ values, print }) => ({
    message: `Pours ${values.pours} now lie in one piece of ${print.area(Number(values.areaM2))}: no joint is left between them.`,
    hint: 'Draw a joint between them, or merge them into one pour.',
  }),
  unplannedPart: ({ values, print }) => ({
    message: `${print.area(Number(values.areaM2))} of the slab belongs to no pour.`,
    hint: 'Make it a pour of its own, or take away the joint that cuts it off.',
  }),
  pourLost: ({ values }) => ({
    message: `Pour ${values.number} has no place on the slab any more; its number, date and notes are kept.`,
    hint: 'Move it back onto the slab, or delete it.',
  }),
  pourOverCap: ({ values, print }) => ({
    message: `Pour ${values.number} is ${print.area(Number(values.areaM2))}, more than ${capWords(values, print)}.`,
    hint:
      values.rule === 'crewAndWeather'
        ? 'Split it, take more hands or another day, or type the largest pour yourself.'
        : 'Split it, or raise the area the crew can stamp at one time.',
  }),
  jointOnForbidden: ({ values }) => ({
    message: `A joint of the accepted pours ${values.kind === 'line' ? 'meets a line that no joint may touch' : 'runs through an area without joints'}.`,
    hint: again(values, `move the joint, or delete the ${values.kind === 'line' ? 'line' : 'area'}`),
  }),
  requiredNotKept: ({ values, print }) => ({
    message: `The accepted pours have no joint along ${print.length(Number(values.lengthM))} of a required joint.`,
    hint: again(values, 'move a joint there, or delete the required joint'),
  }),
  pourUnderWidth: ({ values, print }) => ({
    message: `Pour ${values.number} is ${print.length(Number(values.widthM))} wide, less than the least width of ${print.length(Number(values.leastM))}.`,
    hint: again(values, 'move its joints, or ask for a smaller least width'),
  }),
  lockedPourChanged: ({ values, print }) => ({
    message: `Pour ${values.number} is locked, but its outline or a joint along it moved: it was ${print.area(Number(values.wasM2))} and is ${print.area(Number(values.areaM2))} now.`,
    hint: 'Move it back, or unlock the pour.',
  }),
  anchorLost: () => ({
    message: 'The edge, corner or joint that a joint ended on is gone; the end keeps its last place.',
    hint: 'Drag its end to where it should stop.',
  }),
  jointOutside: () => ({
    message: 'A joint no longer lies on the slab; it divides nothing.',
    hint: 'Move it onto the slab, or delete it.',
  }),
  jointOpen: () => ({
    message: 'A joint ends inside a pour and divides nothing there.',
    hint: 'Drag its end to an edge or to another joint.',
  }),
  differsFromAsBuilt: ({ values, print }) => ({
    message: `The slab was changed under poured concrete: pour ${values.number} was poured with ${print.area(Number(values.builtM2))} and would now have ${print.area(Number(values.areaM2))}; ${print.area(Number(values.byM2))} lies otherwise. It stays as it was poured.`,
    hint: 'Move the outline back to what was poured, or plan the rest anew.',
  }),
  outsideRange: ({ values }) => ({
    message: `${values.what} of ${values.value} lies outside ${values.low} to ${values.high}, where its formula holds.`,
  }),
}
