/** Why a split costs what it costs, in sentences. */
import type { Proposal } from '../../core/pours/proposePours'
import type { Measures } from '../../core/units/measures'

export interface Reason {
  readonly sign: '+' | '−'
  readonly words: string
  /** In feet of joint: what the search weighs. */
  readonly cost: number
}

const against: Readonly<Record<string, string>> = {
  extraPour: 'More pours than the area asks for: another morning of crew and trucks',
  acuteCorner: 'A corner under 60° between joint and edge may break off',
  nearCorner: 'A joint ends close to a corner and leaves a finger of slab',
  finger: 'A strip too narrow for mats runs beside a joint',
  reentrantLeft: 'A re-entrant corner stays inside a pour: cracks start there',
  holeInside: 'An opening lies wholly inside a pour',
  aspect: 'A pour is more than twice as long as it is wide',
  narrow: 'A pour is too narrow for a mat and a kneeling finisher',
  imbalance: 'The pours differ in size',
  offGrid: 'A joint falls off the lines of the contraction joints',
  extraJoint: 'A joint is made in more than one piece',
  teeOffset: 'Two joints meet a third not quite in line',
  reach: 'Part of a pour lies beyond reach from its edge',
}

/** The heaviest first; what costs under 2 ft of joint is not worth a sentence. */
export function costReasons(proposal: Proposal, beside: Proposal | undefined, print: Measures): readonly Reason[] {
  const reasons: Reason[] = []
  const cost = (term: string): number => proposal.cost.find(each => each.term === term)?.value ?? 0
  if (beside && beside !== proposal) {
    const [own, other] = [largestOf(proposal), largestOf(beside)]
    const joint = jointOf(proposal) - jointOf(beside)
    if (other - own > 0.5)
      reasons.push({ sign: '+', words: `Largest pour ${print.area(other - own)} smaller`, cost: 0 })
    const more = proposal.pours.length - beside.pours.length
    if (more > 0)
      reasons.push({
        sign: '−',
        words: `${more === 1 ? 'One more pour' : `${more} more pours`}${joint > 0.01 ? ` and ${print.length(joint)} more joint to hide` : ''}`,
        cost: cost('extraPour'),
      })
  }
  if (proposal.joints.length > 0 && cost('reentrantLeft') === 0)
    reasons.push({ sign: '+', words: 'No re-entrant corner is left inside a pour', cost: 0 })
  if (proposal.proven) reasons.push({ sign: '+', words: 'No cheaper split among all cuts that were tried', cost: 0 })
  const heavy = proposal.cost
    .filter(
      ({ term, value }) => value >= 2 && term in against && !(term === 'extraPour' && beside && beside !== proposal),
    )
    .sort((a, b) => b.value - a.value)
  for (const { term, value } of heavy) reasons.push({ sign: '−', words: against[term]!, cost: value })
  return reasons
}

export const largestOf = ({ pours }: Proposal): number => pours.reduce((most, { areaM2 }) => Math.max(most, areaM2), 0)
export const jointOf = ({ joints }: Proposal): number => joints.reduce((sum, { lengthM }) => sum + lengthM, 0)
