import { useMemo } from 'react'
import type { Quantity } from '../../shared/planJson'
import { Icon } from '../app/Icon'
import { usePlan, useSession, useView } from '../app/session'
import { PoursPage } from '../pours/PoursPage'
import { SheetsPage } from '../sheets/SheetsPage'
import { ClientPage } from '../slab/client/ClientPage'
import { useClient } from '../slab/client/clientStore'
import { SiteForms, SlabForms } from '../slab/SlabForms'
import type { LivePlan } from '../store/livePlan'
import { SunPage } from '../sun/SunPage'
import { FigureRow } from './FigureRow'
import { entityNames } from './nameEntities'
import { Problems } from './Problems'
import { slabFigures } from './slabFigures'

/** The ruled column of figures: only what the stage is about. */
export function Ledger() {
  const live = usePlan(state => state.live)
  const { stage, clientView } = useView(({ stage, clientView }) => ({ stage, clientView }))
  if (!live) return null
  return (
    <aside className="led" aria-label="Ledger" key={stage}>
      {stage === 'slab' ? <SlabPage live={live} /> : null}
      {stage === 'sun' ? <SunPage live={live} /> : null}
      {stage === 'pours' ? <PoursPage live={live} /> : null}
      {stage === 'numbers' ? <NumbersPage live={live} /> : null}
      {stage === 'sheets' && clientView ? <ClientPage live={live} /> : null}
      {stage === 'sheets' && !clientView ? <SheetsPage /> : null}
      {stage === 'log' ? (
        <PlainPage title="Log" words="Nothing logged yet. Times, temperatures and pails are written here on the day." />
      ) : null}
    </aside>
  )
}

const useShared = (live: LivePlan) => {
  const names = useMemo(() => entityNames(live.site), [live.site])
  return { names, units: live.site.units }
}

function UnitsSwitch() {
  const { site } = useSession()
  const units = usePlan(({ live }) => live?.site.units)
  return (
    <button
      type="button"
      className="as-words"
      title="Change the units of the site"
      onClick={() =>
        site.edit('units', draft => {
          draft.units = units === 'ftin' ? 'metric' : 'ftin'
        })
      }
    >
      {units === 'ftin' ? 'feet and inches' : 'metric'}
    </button>
  )
}

function SlabPage({ live }: { readonly live: LivePlan }) {
  const shared = useShared(live)
  const { quantities, isRenewing } = usePlan(({ parts, isRenewing }) => ({ quantities: parts.quantities, isRenewing }))
  const { clientView } = useView(({ clientView }) => ({ clientView }))
  const isSingle = live.slabs.length === 1
  const [{ showAreas }] = useClient(live.site)
  if (clientView && !showAreas) return <ClientPage live={live} />
  return (
    <>
      {clientView ? <ClientPage live={live} /> : <SlabForms site={live.site} />}
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
      {clientView ? null : <SiteForms site={live.site} />}
      {clientView ? null : <Problems />}
    </>
  )
}

const entityOf = (q: Quantity): string => q.id.slice(0, q.id.indexOf('-'))

const claimName = (q: Quantity, names: ReadonlyMap<string, string>): string => {
  const name = names.get(entityOf(q)) ?? q.label
  return name[0]!.toUpperCase() + name.slice(1)
}

const edgeWords: Readonly<Record<string, string>> = { outer: 'outer edge', inner: 'inner edge', center: 'center line' }

function lengthName(q: Quantity, names: ReadonlyMap<string, string>): string {
  const edge = /-(outer|inner|center)-length$/.exec(q.id)?.[1] ?? ''
  return `${claimName(q, names)}, ${edgeWords[edge] ?? 'length'}`
}

const groups: readonly { readonly title: string; readonly holds: (q: Quantity) => boolean }[] = [
  { title: 'Areas', holds: q => q.unit === 'm²' && q.pourId === undefined },
  { title: 'Lengths', holds: q => q.unit === 'm' && q.pourId === undefined },
  { title: 'Concrete and base', holds: q => /^(m³|kg)$/.test(q.unit) && q.pourId === undefined },
  { title: 'Other', holds: q => !/^(m|m²|m³|kg)$/.test(q.unit) && q.pourId === undefined },
]

function NumbersPage({ live }: { readonly live: LivePlan }) {
  const shared = useShared(live)
  const { quantities, pours, isRenewing } = usePlan(({ parts, isRenewing }) => ({
    quantities: parts.quantities,
    pours: parts.pours,
    isRenewing,
  }))
  if (!quantities) return <PlainPage title="Ledger" words="Working" />
  const slabName = (q: Quantity) => (live.slabs.length > 1 ? `${shared.names.get(q.slabId ?? '') ?? ''}: ` : '')
  return (
    <>
      <header>
        <h2>Ledger</h2>
        <UnitsSwitch />
      </header>
      {groups.map(({ title, holds }) => {
        const rows = quantities.filter(holds)
        return rows.length === 0 ? null : (
          <section key={title} aria-label={title}>
            <h3>{title}</h3>
            {rows.map(q => (
              <FigureRow
                {...shared}
                key={q.id}
                quantity={q}
                label={`${slabName(q)}${q.label}`}
                isWaiting={isRenewing}
              />
            ))}
          </section>
        )
      })}
      {pours?.map(pour => (
        <section key={pour.id} aria-label={`Pour ${pour.number}`}>
          <h3>Pour {pour.number}</h3>
          {quantities
            .filter(q => q.pourId === pour.id)
            .map(q => (
              <FigureRow {...shared} key={q.id} quantity={q} isWaiting={isRenewing} />
            ))}
        </section>
      ))}
      <Problems />
    </>
  )
}

function PlainPage({ title, words }: { readonly title: string; readonly words: string }) {
  return (
    <>
      <header>
        <h2>{title}</h2>
      </header>
      <p className="note">
        <Icon name="ledger" /> {words}
      </p>
    </>
  )
}
