import { type KeyboardEvent, type MouseEvent, memo, useEffect, useMemo, useRef, useState } from 'react'
import { printMeasures } from '../../core/units/printMeasures'
import { Icon } from '../app/Icon'
import { useCalmPlan, useCommitted, useSession, useView } from '../app/session'
import { focusPlan } from '../editor/focusPlan'
import { useEditor } from '../editor/useEditor'
import { useClientAreas } from '../slab/client/clientStore'
import { goToForm } from '../slab/goToForm'
import { findRow, type ListState, pressKey, pressRow, rowForTab } from './moveInList'
import { clientSections, type OutlineItem, type OutlineSection, outlineSections } from './outlineOf'

/** Letters typed with a longer pause between them begin a new name. */
const typingMs = 600
const noSections: readonly OutlineSection[] = []

/** The plan as a list, in step with what is selected on the canvas: one tab stop, arrows inside. */
export function PlanOutline() {
  const { view } = useSession()
  const editor = useEditor()
  const { live, pours, joints } = useCalmPlan(({ live, parts }) => ({ live, pours: parts.pours, joints: parts.joints }))
  const { stage, selection, outlineShown, clientView } = useView(({ stage, selection, outlineShown, clientView }) => ({
    stage,
    selection,
    outlineShown,
    clientView,
  }))
  const showsAreas = useClientAreas(live?.site.id)
  // While a gesture is in hand the list stays as it was: a row read aloud must not change at every move.
  const committed = useCommitted()
  const settled = useRef(live)
  if (live?.site === committed || live?.site.id !== settled.current?.site.id) settled.current = live
  const listed = settled.current
  const [shownPours, shownJoints] = stage === 'pours' ? [pours, joints] : []
  const sections = useMemo(
    () =>
      !listed
        ? noSections
        : clientView
          ? clientSections(listed, showsAreas, printMeasures(listed.site.units))
          : outlineSections(
              listed,
              { ...(shownPours ? { pours: shownPours } : {}), ...(shownJoints ? { joints: shownJoints } : {}) },
              printMeasures(listed.site.units),
            ),
    [listed, shownPours, shownJoints, clientView, showsAreas],
  )
  const choose = (chosen: readonly string[]) => {
    const { action, drawing, edges } = editor.getState()
    // An action that nothing was begun with would hide what can be said about the chosen.
    if (action !== 'select' && edges.length === 0 && (drawing?.placed.length ?? 0) === 0) editor.choose('select')
    view.setState({ selection: chosen })
  }
  const edits = stage === 'slab' && !clientView
  return (
    <div className="plan-outline" data-shown={outlineShown || undefined}>
      <button
        type="button"
        className="btn"
        aria-expanded={outlineShown}
        onClick={() => view.setState({ outlineShown: !outlineShown })}
      >
        <Icon name="outline" />
        Outline
      </button>
      <div className="plan-outline-list">
        <OutlineList
          sections={sections}
          selection={selection}
          onSelect={choose}
          {...(edits ? { onDelete: () => editor.remove() } : {})}
        />
      </div>
    </div>
  )
}

const nowhere = { active: null, anchor: null } as const

function OutlineList({
  sections,
  selection,
  onSelect,
  onDelete,
}: {
  readonly sections: readonly OutlineSection[]
  readonly selection: readonly string[]
  readonly onSelect: (selection: readonly string[]) => void
  /** Takes what is chosen off the plan; undefined where nothing is edited. */
  readonly onDelete?: () => void
}) {
  const [hand, setHand] = useState<Omit<ListState, 'selection'>>(nowhere)
  const typed = useRef({ text: '', atMs: 0 })
  const rows = useMemo(() => sections.flatMap(({ items }) => items), [sections])
  const state: ListState = { ...hand, selection }
  const list = useRef<HTMLDivElement>(null)
  const own = useRef(selection)
  // Chosen elsewhere, on the plan or by a form: whoever comes to the list then finds himself at what is chosen.
  useEffect(() => {
    if (selection !== own.current && !list.current?.contains(document.activeElement)) setHand(nowhere)
    own.current = selection
  }, [selection])
  const tabStop = rowForTab(rows, state)
  const go = ({ selection: chosen, active, anchor }: ListState) => {
    setHand({ active, anchor })
    own.current = chosen
    if (chosen !== selection) onSelect(chosen)
    const row = active === null ? null : document.getElementById(rowId(active))
    row?.focus()
    row?.scrollIntoView({ block: 'nearest' })
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (onDelete && (event.key === 'Delete' || event.key === 'Backspace')) takeOut(onDelete)
    else {
      const next = pressKey(rows, state, event) ?? goTo(event)
      if (next !== null) go(next)
      else if (event.key === 'Escape') focusPlan()
      else return
    }
    if (event.key === 'Enter') setTimeout(goToForm)
    event.preventDefault()
    event.stopPropagation()
  }
  /** The row that comes in the place of the ones taken out has the focus then. */
  const takeOut = (remove: () => void) => {
    const at = rows.findIndex(({ id }) => id === tabStop)
    const isLeft = ({ id }: OutlineItem) => !selection.includes(id)
    const next = rows.slice(at).find(isLeft) ?? rows.slice(0, at).findLast(isLeft)
    remove()
    if (next) setTimeout(() => document.getElementById(rowId(next.id))?.focus())
  }
  const goTo = ({ key, ctrlKey, metaKey, altKey, timeStamp }: KeyboardEvent): ListState | null => {
    if (key.length !== 1 || ctrlKey || metaKey || altKey) return null
    const { text, atMs } = typed.current
    typed.current = { text: timeStamp - atMs > typingMs ? key : text + key, atMs: timeStamp }
    const found = findRow(rows, tabStop, typed.current.text)
    return found === null ? null : pressRow(rows, state, found)
  }
  const onClick = (event: MouseEvent) => {
    const id = event.target instanceof Element ? event.target.closest<HTMLElement>('[role=option]')?.dataset.id : null
    // A press told by a screen reader counts no clicks: without keys to hold, it can only add and take away.
    const adds = event.ctrlKey || event.metaKey || event.detail === 0
    if (id) go(pressRow(rows, state, id, { adds, runs: event.shiftKey }))
  }
  if (rows.length === 0) return <p>Nothing drawn yet.</p>
  return (
    <div
      role="listbox"
      aria-label="Outline of the plan"
      aria-multiselectable
      ref={list}
      tabIndex={-1}
      onKeyDown={onKeyDown}
      onClick={onClick}
    >
      {sections.map(section => (
        <Section key={section.id} {...section} selection={selection} tabStop={tabStop} onFocus={setHand} />
      ))}
    </div>
  )
}

const rowId = (id: string): string => `outline-${id}`
const headId = (sectionId: string): string => `outline-of-${sectionId.replaceAll(' ', '-')}`

type SetHand = (change: (hand: Omit<ListState, 'selection'>) => Omit<ListState, 'selection'>) => void

interface SectionOf extends OutlineSection {
  readonly selection: readonly string[]
  readonly tabStop: string | null
  readonly onFocus: SetHand
}

/** A section that reads as before is left alone with all its rows. */
const Section = memo(
  function Section({ id, name, items, selection, tabStop, onFocus }: SectionOf) {
    return (
      // biome-ignore lint/a11y/useSemanticElements: a group of options has no element of its own
      <div role="group" aria-labelledby={headId(id)}>
        <div role="presentation" id={headId(id)} className="outline-head">
          {name}
        </div>
        {items.map(item => (
          <OutlineRow
            key={item.id}
            {...item}
            isChosen={selection.includes(item.id)}
            isTabStop={item.id === tabStop}
            onFocus={onFocus}
          />
        ))}
      </div>
    )
  },
  (a, b) =>
    a.name === b.name &&
    a.selection === b.selection &&
    a.tabStop === b.tabStop &&
    a.items.length === b.items.length &&
    a.items.every((item, i) => readsAs(item, b.items[i]!)),
)

const readsAs = (a: OutlineItem, b: OutlineItem): boolean => a.id === b.id && a.name === b.name && a.detail === b.detail

const OutlineRow = memo(function OutlineRow({
  id,
  name,
  detail,
  isChosen,
  isTabStop,
  onFocus,
}: {
  readonly id: string
  readonly name: string
  readonly detail: string
  readonly isChosen: boolean
  readonly isTabStop: boolean
  readonly onFocus: SetHand
}) {
  const own = rowId(id)
  return (
    <div
      id={own}
      data-id={id}
      role="option"
      className="outline-row"
      aria-selected={isChosen}
      aria-labelledby={`${own}-name`}
      aria-describedby={`${own}-detail`}
      tabIndex={isTabStop ? 0 : -1}
      onFocus={() => onFocus(hand => (hand.active === id ? hand : { ...hand, active: id }))}
    >
      <span id={`${own}-name`} className="outline-name">
        {name}
      </span>
      <span id={`${own}-detail`} className="outline-detail">
        {detail}
      </span>
    </div>
  )
})
