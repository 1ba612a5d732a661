/** Where keys and clicks lead in a list in which many rows may be chosen; without the page. */

export interface ListState {
  /** Ids, the last chosen last. */
  readonly selection: readonly string[]
  /** The row that has the focus, or would get it; null for none yet. */
  readonly active: string | null
  /** Where a run of rows began. */
  readonly anchor: string | null
}

export interface Row {
  readonly id: string
  readonly name: string
}

export interface ListKey {
  readonly key: string
  readonly shiftKey: boolean
  readonly ctrlKey: boolean
  readonly metaKey: boolean
}

const pageRows = 10

/** The row that Tab comes to: the one last left, else the first chosen, else the first. */
export function rowForTab(rows: readonly Row[], { active, selection }: ListState): string | null {
  if (active !== null && rows.some(({ id }) => id === active)) return active
  return (rows.find(({ id }) => selection.includes(id)) ?? rows[0])?.id ?? null
}

function runBetween(rows: readonly Row[], from: string | null, to: string): string[] {
  const ends = [rows.findIndex(({ id }) => id === from), rows.findIndex(({ id }) => id === to)]
  const [first, last] = ends[0]! < 0 ? [ends[1]!, ends[1]!] : [Math.min(...ends), Math.max(...ends)]
  const ids = rows.slice(first, last + 1).map(({ id }) => id)
  // The row the hand is on counts as chosen last.
  return [...ids.filter(id => id !== to), to]
}

/** A row is pressed: it alone is chosen; `adds` changes only it, `runs` takes all rows from where the run began. */
export function pressRow(
  rows: readonly Row[],
  state: ListState,
  id: string,
  { adds = false, runs = false }: { readonly adds?: boolean; readonly runs?: boolean } = {},
): ListState {
  if (runs) return { ...state, selection: runBetween(rows, state.anchor, id), active: id }
  const { selection } = state
  const toggled = selection.includes(id) ? selection.filter(each => each !== id) : [...selection, id]
  return { selection: adds ? toggled : [id], active: id, anchor: id }
}

/**
 * Arrows, Home, End and the page keys go to a row and choose it; with Shift they take the rows on the way, with Control
 * they only go there. Space and Enter press the row, Control+A chooses all, Esc none. Null for a key that is none of
 * the list's.
 */
export function pressKey(
  rows: readonly Row[],
  state: ListState,
  { key, shiftKey, ctrlKey, metaKey }: ListKey,
): ListState | null {
  const here = rowForTab(rows, state)
  if (here === null) return null
  const adds = ctrlKey || metaKey
  if (key === ' ' || key === 'Enter') return pressRow(rows, state, here, { adds, runs: shiftKey })
  if (key === 'Escape') return state.selection.length > 0 ? { ...state, selection: [] } : null
  if (adds && key.toLowerCase() === 'a') return { ...state, selection: rows.map(({ id }) => id) }
  const at = rows.findIndex(({ id }) => id === here)
  const steps: Readonly<Record<string, number>> = {
    ArrowDown: 1,
    ArrowUp: -1,
    PageDown: pageRows,
    PageUp: -pageRows,
    Home: -rows.length,
    End: rows.length,
  }
  const by = steps[key]
  if (by === undefined) return null
  const to = rows[Math.max(0, Math.min(rows.length - 1, at + by))]!.id
  return adds && !shiftKey ? { ...state, active: to } : pressRow(rows, state, to, { runs: shiftKey })
}

/** The next row whose name begins with what was typed, from the active one on; letters typed later narrow it. */
export function findRow(rows: readonly Row[], active: string | null, typed: string): string | null {
  const from = Math.max(0, rows.findIndex(({ id }) => id === active) + (typed.length === 1 ? 1 : 0))
  const inOrder = [...rows.slice(from), ...rows.slice(0, from)]
  const start = typed.toLowerCase()
  return inOrder.find(({ name }) => name.toLowerCase().startsWith(start))?.id ?? null
}
