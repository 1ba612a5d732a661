import { type KeyboardEvent, memo, useEffect, useRef } from 'react'
import { capitalize } from '../../core/units/capitalize'
import type { Quantity } from '../../shared/planJson'
import { useCalmPlan, useSession, useView } from '../app/session'
import { LogPage } from '../atSlab/LogPage'
import { focusPlan } from '../editor/focusPlan'
import { useEditor } from '../editor/useEditor'
import { PoursPage } from '../pours/PoursPage'
import { SheetsPage } from '../sheets/SheetsPage'
import { ClientPage } from '../slab/client/ClientPage'
import { useClient } from '../slab/client/clientStore'
import { SiteForms, SlabForms } from '../slab/SlabForms'
import type { LivePlan } from '../store/livePlan'
import { SunPage } from '../sun/SunPage'
import { FigureRow } from './FigureRow'
import { NumbersPage } from './NumbersPage'
import { Problems } from './Problems'
import { slabFigures } from './slabFigures'
import { UnitsSwitch } from './UnitsSwitch'
import { useEntityNames } from './useEntityNames'
import { useShownFolds } from './useShownFolds'

/** The ruled column of figures: only what the stage is about. */
export function Ledger() {
  const live = useCalmPlan(state => state.live)
  const { stage, clientView } = useView(({ stage, clientView }) => ({ stage, clientView }))
  const ledger = useShownForm()
  useShownFolds(ledger, live ? stage : null)
  const { view } = useSession()
  /** Esc that no box took shuts the figure that is open, then goes back to the plan. */
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || event.defaultPrevented || stage !== 'slab') return
    if (view.getState().openFigure === null) focusPlan()
    else view.setState({ openFigure: null })
  }
  if (!live) return null
  return (
    <aside className="led" aria-label="Ledger" key={stage} ref={ledger} onKeyDown={onKeyDown}>
      {stage === 'slab' ? <SlabPage live={live} /> : null}
      {stage === 'sun' ? <SunPage live={live} /> : null}
      {stage === 'pours' ? <PoursPage live={live} /> : null}
      {stage === 'numbers' ? <NumbersPage live={live} /> : null}
      {stage === 'sheets' && clientView ? <ClientPage live={live} /> : null}
      {stage === 'sheets' && !clientView ? <SheetsPage /> : null}
      {stage === 'log' ? <LogPage site={live.site} /> : null}
    </aside>
  )
}

/** The form of what is drawn or chosen stands at the top: a ledger that was scrolled comes back to it. */
function useShownForm() {
  const ledger = useRef<HTMLElement>(null)
  const editor = useEditor()
  const { view } = useSession()
  useEffect(() => {
    const show = () => {
      const element = ledger.current
      const focused = document.activeElement
      // Whoever reads a figure and follows it to the plan stays where he reads.
      if (!element || (element.contains(focused) && !focused?.closest('.slab-form'))) return
      element.scrollTop = 0
      for (const form of element.querySelectorAll('.chosen-form')) form.scrollTop = 0
    }
    const stops = [
      view.subscribe((now, was) => {
        if (now.stage === 'slab' && now.selection !== was.selection) show()
      }),
      editor.subscribe((now, was) => {
        if (now.action !== was.action) show()
      }),
    ]
    return () => {
      for (const stop of stops) stop()
    }
  }, [view, editor])
  return ledger
}

const useShared = (live: LivePlan) => {
  const names = useEntityNames(live.site)
  return { names, units: live.site.units }
}

function SlabPage({ live }: { readonly live: LivePlan }) {
  const clientView = useView(state => state.clientView)
  const [{ showAreas }] = useClient(live.site)
  return (
    <>
      {clientView ? <ClientPage live={live} /> : <SlabForms site={live.site} />}
      {clientView && !showAreas ? null : <SlabFigures clientView={clientView} />}
      {clientView ? null : <SiteForms site={live.site} />}
      {clientView ? null : <Problems />}
    </>
  )
}

/** Areas, lengths and materials of the slabs, as fast as they can be read. */
const SlabFigures = memo(function SlabFigures({ clientView }: { readonly clientView: boolean }) {
  const { live, quantities, isRenewing } = useCalmPlan(({ live, parts, isRenewing }) => ({
    live,
    quantities: parts.quantities,
    isRenewing,
  }))
  return live ? <Figures {...{ live, quantities, isRenewing, clientView }} /> : null
})

function Figures({
  live,
  quantities,
  isRenewing,
  clientView,
}: {
  readonly live: LivePlan
  readonly quantities: readonly Quantity[] | undefined
  readonly isRenewing: boolean
  readonly clientView: boolean
}) {
  const shared = useShared(live)
  const isSingle = live.slabs.length === 1
  return (
    <>
      <header>
        <h2>Areas</h2>
        <UnitsSwitch />
      </header>
      {live.slabs.map((slab, i) => {
        const { areas, claims, lengths } = slabFigures(slab, live.site.slabs[i]!)
        const area = (end: string) => areas.find(q => q.id.endsWith(end))
        const [gross, openings, net, field] = ['-gross-area', '-opening-area', '-net-area', '-field-area'].map(area)
        const concrete = quantities?.filter(
          q => q.slabId === slab.id && q.pourId === undefined && /-(concrete|base)-/.test(q.id),
        )
        return (
          <section key={slab.id} aria-label={slab.name}>
            {net ? <FigureRow {...shared} quantity={net} kind="sum" label={isSingle ? 'Slab' : slab.name} /> : null}
            {gross ? <FigureRow {...shared} quantity={gross} kind="sub" label="Outline" /> : null}
            {openings && openings.value > 0 ? (
              <FigureRow {...shared} quantity={openings} kind="sub" label="Less openings" />
            ) : null}
            {field && field.value !== net?.value ? <FigureRow {...shared} quantity={field} label="Field" /> : null}
            {claims
              .filter(q => q.unit === 'm²')
              .map(q => (
                <FigureRow {...shared} key={q.id} quantity={q} label={claimName(q, shared.names)} />
              ))}
            <h3>Lengths</h3>
            {lengths
              .filter(q => q.value > 0)
              .map(q => (
                <FigureRow {...shared} key={q.id} quantity={q} />
              ))}
            {claims
              .filter(q => q.unit === 'm' && (q.id.endsWith('-outer-length') || q.id.endsWith('-length')))
              .map(q => (
                <FigureRow {...shared} key={q.id} quantity={q} label={lengthName(q, shared.names)} />
              ))}
            {clientView ? null : (
              <>
                <h3>Concrete and base</h3>
                {concrete?.map(q => <FigureRow {...shared} key={q.id} quantity={q} isWaiting={isRenewing} />) ?? (
                  <p className="note">Working</p>
                )}
              </>
            )}
          </section>
        )
      })}
      {live.slabs.length === 0 ? <p className="note">Areas, borders and lengths are listed here as you draw.</p> : null}
    </>
  )
}

const entityOf = (q: Quantity): string => q.id.slice(0, q.id.indexOf('-'))

const claimName = (q: Quantity, names: ReadonlyMap<string, string>): string => {
  const name = names.get(entityOf(q)) ?? q.label
  return capitalize(name)
}

const edgeWords: Readonly<Record<string, string>> = { outer: 'outer edge', inner: 'inner edge', center: 'center line' }

function lengthName(q: Quantity, names: ReadonlyMap<string, string>): string {
  const edge = /-(outer|inner|center)-length$/.exec(q.id)?.[1] ?? ''
  return `${claimName(q, names)}, ${edgeWords[edge] ?? 'length'}`
}
