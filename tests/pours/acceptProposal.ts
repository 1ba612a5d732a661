import type { Proposal } from '../../core/pours/proposal'
import { toCutRegion } from '../../core/pours/region/cutRegion'
import { insidePoint } from '../../core/pours/region/insidePoint'
import type { AcceptedPours } from '../../shared/document/pours'

/** The proposal as a document would keep it: free ends, a seed in each pour. */
export const acceptProposal = (proposal: Proposal): AcceptedPours => ({
  slabId: 's1',
  part: 'whole',
  joints: proposal.joints.map((joint, i) => ({
    id: `j${i + 1}`,
    ends: [
      { anchor: { on: 'free' }, last: joint.from },
      { anchor: { on: 'free' }, last: joint.to },
    ],
    locked: false,
    kind: 'construction',
  })),
  pours: proposal.pours.map((pour, i) => ({
    id: `p${i + 1}`,
    number: String(i + 1),
    seed: insidePoint(toCutRegion(pour.region)),
    lock: { shape: false, time: false },
  })),
})
