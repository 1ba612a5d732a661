import type { Memo } from '../../core/plan/memo'

/**
 * An answer for each row of a list, the same list as long as the inputs are. Of a list that has changed, rows that
 * stood in it keep theirs, unless one of the other inputs is another.
 */
export const rowByRow = <Row extends object, T extends object>(
  memo: Memo,
  name: string,
  entityId: string,
  inputs: readonly [rows: readonly Row[], ...others: readonly unknown[]],
  work: (row: Row) => T,
): readonly T[] =>
  memo.part<readonly T[]>(name, entityId, inputs, last => {
    const [rows, ...others] = inputs
    const isKept = last !== undefined && others.every((other, i) => Object.is(other, last.inputs[i + 1]))
    const before = isKept ? (last.inputs[0] as readonly Row[]) : []
    const known = new Map(before.map((row, i) => [row, last?.value[i]]))
    return rows.map(row => known.get(row) ?? work(row))
  })
