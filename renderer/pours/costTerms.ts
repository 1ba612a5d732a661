/** What a split costs, term by term, as the table of weights has it. */
import type { Proposal } from '../../core/pours/proposal'
import { type Weights, weightTable } from '../../core/pours/weights'

interface TermWords {
  readonly name: string
  /** Why it counts against a split, as one says it on the site. */
  readonly against: string
  /** The rows of the table it is worked out with; the term's own row where left out. */
  readonly rows?: readonly (keyof Weights)[]
}

const words: Readonly<Record<string, TermWords>> = {
  extraPour: {
    name: 'Pours beyond the fewest',
    against: 'More pours than the area asks for: another morning of crew and trucks',
  },
  jointLength: { name: 'Length of joint', against: 'Joint to form, dowel and detail' },
  acuteCorner: {
    name: 'Sharp corners',
    against: 'A corner under 60° between joint and edge may break off',
    rows: ['acuteCorner', 'acuteFloor', 'acuteBelowDeg'],
  },
  nearCorner: {
    name: 'Joints close to a corner',
    against: 'A joint ends close to a corner and leaves a finger of slab',
    rows: ['nearCorner', 'nearCornerM'],
  },
  finger: {
    name: 'Fingers of slab',
    against: 'A strip too narrow for mats runs beside a joint',
    rows: ['finger', 'fingerM'],
  },
  reentrantLeft: {
    name: 'Re-entrant corners left',
    against: 'A re-entrant corner stays inside a pour: cracks start there',
  },
  holeInside: { name: 'Openings inside a pour', against: 'An opening lies wholly inside a pour' },
  aspect: {
    name: 'Long pours',
    against: 'A pour is more than twice as long as it is wide',
    rows: ['aspect', 'aspectAbove', 'aspectMost'],
  },
  narrow: {
    name: 'Narrow pours',
    against: 'A pour is too narrow for a mat and a kneeling finisher',
    rows: ['narrow', 'narrowM'],
  },
  imbalance: { name: 'Pours of unlike size', against: 'The pours differ in size' },
  offGrid: { name: 'Joints off the joint lines', against: 'A joint falls off the lines of the contraction joints' },
  nearMiter: {
    name: 'Joints beside a miter',
    against: 'A joint beside a miter leaves a loose wedge of border',
    rows: ['nearMiter', 'nearMiterM'],
  },
  offDirection: { name: 'Joints off the wished direction', against: 'A joint runs across the wished direction' },
  hidden: { name: 'Joints hidden', against: '' },
  extraJoint: { name: 'Joints in pieces', against: 'A joint is made in more than one piece' },
  teeOffset: {
    name: 'Joints not quite in line',
    against: 'Two joints meet a third not quite in line',
    rows: ['teeOffset', 'teeFloor', 'teeWithinM'],
  },
  reach: { name: 'Out of reach', against: 'Part of a pour lies beyond reach from its edge', rows: ['reach', 'reachM'] },
  shadeLine: {
    name: 'Sun and shade on one pour',
    against: 'A shade line crosses a pour between placing and stamping',
    rows: ['shadeLine', 'shadeLineMost'],
  },
  mixedPlacing: { name: 'Placed two ways', against: 'A pour lies partly within reach of the chute, partly beyond it' },
  unusedTruck: { name: 'Trucks not filled', against: 'Part of a truck is ordered and not filled' },
  shortLoad: { name: 'Short loads', against: 'A load is small enough for a fee' },
}

export interface CostTerm {
  readonly term: string
  readonly name: string
  readonly against: string
  /** Feet of joint; less than zero where it speaks for the split. */
  readonly ft: number
  readonly weights: readonly {
    readonly id: string
    readonly value: number
    readonly unit: string
    readonly meaning: string
    readonly source: string
  }[]
}

/** Smaller amounts than this are nothing to speak of (ft of joint). */
const leastFt = 0.005

const isWeight = (name: string): name is keyof Weights => Object.hasOwn(weightTable, name)

/** The terms that weigh anything, the heaviest first. They add up to the split's whole cost. */
export function costTerms({ cost }: Pick<Proposal, 'cost'>): readonly CostTerm[] {
  return cost
    .filter(({ value }) => Math.abs(value) >= leastFt)
    .map(({ term, value }): CostTerm => {
      const own = words[term]
      const rows = own?.rows ?? (isWeight(term) ? [term] : [])
      return {
        term,
        name: own?.name ?? term,
        against: own?.against ?? '',
        ft: value,
        weights: rows.map(id => ({ id, ...weightTable[id] })),
      }
    })
    .sort((a, b) => b.ft - a.ft)
}

export const termsWithWords: ReadonlySet<string> = new Set(Object.keys(words))
