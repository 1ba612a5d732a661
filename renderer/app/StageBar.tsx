import { type KeyboardEvent, memo, useRef } from 'react'
import { printMeasures } from '../../core/units/printMeasures'
import { redoName, undoName } from '../store/history'
import { type Stage, stages } from '../store/viewStore'
import { FileMenu } from './FileMenu'
import { Icon } from './Icon'
import { printDate } from './printDate'
import { useCalmPlan, usePlan, useSession, useSite, useView } from './session'
import { useKept } from './useKept'

const names: Readonly<Record<Stage, string>> = {
  slab: 'Slab',
  sun: 'Sun',
  pours: 'Pours',
  numbers: 'Numbers',
  sheets: 'Sheets',
  log: 'Log',
}

const hidden: ReadonlySet<Stage> = new Set(['pours', 'numbers', 'log'])

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`

/** Each stage's one telling figure. */
function useFigures(): Readonly<Record<Stage, string>> {
  const { live, date, parts, isRenewing } = useCalmPlan(({ live, date, parts, isRenewing }) => ({
    live,
    date,
    parts,
    isRenewing,
  }))
  if (!live) return { slab: '', sun: '', pours: '', numbers: '', sheets: '', log: '' }
  const print = printMeasures(live.site.units)
  const areaM2 = live.slabs.reduce((sum, slab) => sum + slab.netAreaM2, 0)
  const orderM3 = parts.quantities?.find(({ id }) => id === 'total-ordered')?.value
  const working = isRenewing ? 'working' : ''
  const isEmpty = live.slabs.length === 0
  return {
    slab: isEmpty
      ? 'nothing drawn'
      : live.slabs.some(({ findings }) => findings.some(({ severity }) => severity === 'stop'))
        ? 'check outline'
        : print.area(areaM2),
    sun: printDate(date),
    pours: isEmpty ? 'nothing yet' : parts.pours ? count(parts.pours.length, 'pour', 'pours') : working,
    numbers: isEmpty
      ? 'nothing yet'
      : orderM3
        ? print.volume(orderM3)
        : parts.quantities
          ? count(parts.quantities.length, 'figure', 'figures')
          : working,
    sheets: parts.dayPlans
      ? parts.dayPlans.length > 0
        ? count(parts.dayPlans.length, 'day sheet', 'day sheets')
        : 'plan sheets'
      : working,
    log: live.site.log?.length ? count(live.site.log.length, 'entry', 'entries') : 'nothing yet',
  }
}

const Stages = () => <StageList {...useFigures()} />

/** The list of six stages, one tab stop; digits choose only while it has the focus. */
const StageList = memo(function StageList(figures: Readonly<Record<Stage, string>>) {
  const { view } = useSession()
  const { stage, clientView } = useView(({ stage, clientView }) => ({ stage, clientView }))
  const list = useRef<HTMLOListElement>(null)
  const shown = stages.filter(each => !clientView || !hidden.has(each))
  const told = (each: Stage): string =>
    clientView && each !== 'sun' ? (each === 'sheets' ? 'the drawing' : '') : figures[each]
  const go = (to: Stage | undefined) => {
    if (!to) return
    view.setState({ stage: to })
    list.current?.querySelector<HTMLButtonElement>(`[data-stage=${to}]`)?.focus()
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const at = shown.indexOf(stage)
    const to =
      event.key === 'ArrowRight'
        ? shown[Math.min(shown.length - 1, at + 1)]
        : event.key === 'ArrowLeft'
          ? shown[Math.max(0, at - 1)]
          : event.key === 'Home'
            ? shown[0]
            : event.key === 'End'
              ? shown.at(-1)
              : /^[1-6]$/.test(event.key) && !event.ctrlKey && !event.metaKey && !event.altKey
                ? shown[Number(event.key) - 1]
                : undefined
    if (to === undefined) return
    event.preventDefault()
    go(to)
  }
  return (
    <nav aria-label="Stages" className="stage-nav">
      <ol className="stages" ref={list} onKeyDown={onKeyDown}>
        {shown.map(each => (
          <li key={each}>
            <button
              type="button"
              data-stage={each}
              aria-current={each === stage ? 'step' : undefined}
              tabIndex={each === stage ? 0 : -1}
              onClick={() => go(each)}
            >
              <b>{names[each]}</b>
              <i>{told(each) || ' '}</i>
            </button>
          </li>
        ))}
      </ol>
    </nav>
  )
})

/** Where there is nothing to take back a button is only marked so: the focus of whoever pressed it last stays there. */
function UndoRedo() {
  const { site } = useSession()
  const { undo, redo } = useSite(({ history }) => ({
    undo: history ? undoName(history) : undefined,
    redo: history ? redoName(history) : undefined,
  }))
  return (
    <>
      <button
        type="button"
        className="btn bare undo"
        aria-disabled={undo === undefined || undefined}
        title={undo ? `Undo ${undo}` : 'Undo'}
        onClick={() => site.undo()}
      >
        <Icon name="undo" />
        <span>Undo{undo ? ` ${undo}` : ''}</span>
      </button>
      <button
        type="button"
        className="btn bare redo"
        aria-disabled={redo === undefined || undefined}
        aria-label={redo ? `Redo ${redo}` : 'Redo'}
        title={redo ? `Redo ${redo}` : 'Redo'}
        onClick={() => site.redo()}
      >
        <Icon name="redo" />
      </button>
    </>
  )
}

export function StageBar() {
  const { view, keeper } = useSession()
  const name = usePlan(({ live }) => live?.site.name ?? '')
  const clientView = useView(state => state.clientView)
  const kept = useKept()
  return (
    <header className="top">
      <div className="job-cell">
        <h1 className="job">
          <button type="button" className="job-name" title="Back to the start page" onClick={() => void keeper.leave()}>
            <b>{name}</b>
            <span>{kept}</span>
          </button>
        </h1>
        <FileMenu />
      </div>
      <Stages />
      <div className="acts">
        {clientView ? null : <UndoRedo />}
        <button
          type="button"
          className="btn"
          aria-pressed={clientView}
          onClick={() =>
            view.setState(({ clientView: was, stage }) => ({
              clientView: !was,
              stage: !was && hidden.has(stage) ? 'slab' : stage,
            }))
          }
        >
          <Icon name="eye" />
          Client view
        </button>
      </div>
    </header>
  )
}
