/** A walk around a slab as it stands in the field book, read row by row. */
import type { TraverseLeg, TraverseOptions } from '../../../core/geometry/field/traverse'
import { parseLength } from '../../../core/units/parseLength'
import type { UnitSystem } from '../../../shared/document/site'
import { err, ok, type Result } from '../../../shared/problem'
import { parseBearing, parseDirection, parseTurn, turnBetween } from './directions'

/** One edge as it is typed. */
export interface WalkRow {
  /** Of the first edge the way it runs, of others the turn before them; a bearing on any. */
  readonly turn: string
  readonly length: string
  /** Rise of an arc over this edge, out of the slab; less than zero into it. Empty for a straight edge. */
  readonly rise: string
}

export interface WalkNotes {
  readonly rows: readonly WalkRow[]
  /** The turn back onto the first edge; empty where it was not taken. */
  readonly lastTurn: string
}

const square = (turn: string): WalkRow => ({ turn, length: '', rise: '' })

export const oneMoreRow: WalkRow = square('90 left')

export const blankWalk: WalkNotes = {
  rows: [square('right'), oneMoreRow, oneMoreRow, oneMoreRow],
  lastTurn: '',
}

export type WalkBox = 'turn' | 'length' | 'rise'

export interface WalkFault {
  /** Which box it is about; row −1 is the last turn. */
  readonly row: number
  readonly box: WalkBox
  readonly message: string
}

export interface ReadWalk {
  readonly legs: readonly TraverseLeg[]
  readonly options: Required<Pick<TraverseOptions, 'headingDeg'>> & Pick<TraverseOptions, 'lastTurnDeg'>
  /** Of each leg, out of the slab, meters; 0 = straight. */
  readonly risesM: readonly number[]
}

/** Reads the rows down to the last one with a length; an empty length before that is a fault. */
export function readWalk(
  { rows, lastTurn }: WalkNotes,
  units: UnitSystem,
  northDeg: number,
): Result<ReadWalk, WalkFault> {
  const count = rows.findLastIndex(({ length }) => length.trim() !== '') + 1
  const legs: TraverseLeg[] = []
  const risesM: number[] = []
  let facesDeg = 90
  let headingDeg = 0
  const turnAt = (text: string): Result<number, { readonly message: string }> => {
    const bearing = parseBearing(text)
    return bearing === undefined ? parseTurn(text) : ok(turnBetween(facesDeg, bearing + northDeg))
  }
  for (const [row, { turn, length, rise }] of rows.slice(0, count).entries()) {
    const fault = (box: WalkBox, message: string) => err({ row, box, message })
    if (row === 0) {
      const runs = parseDirection(turn, northDeg)
      if (!runs.ok) return fault('turn', runs.error.message)
      facesDeg = runs.value
      headingDeg = 90 - runs.value
    }
    const turned = row === 0 ? ok(0) : turnAt(turn)
    if (!turned.ok) return fault('turn', turned.error.message)
    if (row > 0) facesDeg -= turned.value
    if (length.trim() === '') return fault('length', `Edge ${row + 1} has no length.`)
    const long = parseLength(length, units)
    if (!long.ok) return fault('length', long.error.message)
    const risen = rise.trim() === '' ? ok(0) : parseLength(rise, units)
    if (!risen.ok) return fault('rise', risen.error.message)
    legs.push({ lengthM: long.value, turnDeg: turned.value })
    risesM.push(risen.value)
  }
  if (lastTurn.trim() === '') return ok({ legs, risesM, options: { headingDeg } })
  const last = turnAt(lastTurn)
  if (!last.ok) return err({ row: -1, box: 'turn', message: last.error.message })
  return ok({ legs, risesM, options: { headingDeg, lastTurnDeg: last.value } })
}
