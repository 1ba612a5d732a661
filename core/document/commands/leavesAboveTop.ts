import type { Finding } from '../../../shared/problem'

/** Why a tree cannot be as high as this, above its ground: its lowest leaves would hang at its top or higher. */
export const leavesAboveTop = (leavesM: number, heightM: number): Finding | undefined =>
  leavesM < heightM ? undefined : { code: 'leavesAboveTop', severity: 'stop', values: { leavesM, heightM } }
