import { useEffect, useState } from 'react'
import { useStore } from 'zustand'
import { readSite } from '../../core/document/readSite'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import type { StartInfo } from '../../shared/host'
import { themes } from '../store/viewStore'
import { fileWords } from './fileWords'
import { Icon } from './Icon'
import { SitePicture } from './SitePicture'
import { useSession, useView } from './session'

interface Sample {
  readonly sampleId: string
  readonly name: string
  /** Null while it is read, or where it cannot be. */
  readonly site: Site | null
}

/** What the host lists, asked again each time the page is shown: a site may have been kept since. */
function useStart(): StartInfo {
  const { host, start } = useSession()
  const [listed, setListed] = useState(start)
  useEffect(() => {
    let isGone = false
    void host.start({}).then(answer => {
      if (!isGone && answer.ok) setListed(answer.value)
    })
    return () => {
      isGone = true
    }
  }, [host])
  return listed
}

function useSamples(): readonly Sample[] {
  const { host, start } = useSession()
  const [sites, setSites] = useState<Readonly<Record<string, Site>>>({})
  useEffect(() => {
    let isGone = false
    for (const { sampleId } of start.samples) {
      void host.sampleText({ sampleId }).then(answer => {
        const read = answer.ok ? readSite(answer.value.text) : null
        if (!isGone && read?.ok) setSites(known => ({ ...known, [sampleId]: read.value }))
      })
    }
    return () => {
      isGone = true
    }
  }, [host, start.samples])
  return start.samples.map(({ sampleId, name }) => ({ sampleId, name, site: sites[sampleId] ?? null }))
}

function describe(site: Site): string {
  const areaM2 = site.slabs.reduce((sum, slab) => sum + resolveSlab(slab).netAreaM2, 0)
  const finish = site.finishes.find(each => each.id === site.slabs[0]?.finishId)
  const slabs = site.slabs.length > 1 ? `, ${site.slabs.length} slabs` : ''
  return `${printMeasures(site.units).area(areaM2)}${slabs}${finish ? `, ${finish.name.toLowerCase()}` : ''}`
}

const day = new Intl.DateTimeFormat('en-US', { weekday: 'short', day: 'numeric', month: 'short' })

/** Where nothing is open yet: what was open lately, samples as pictures, a new site. */
export function StartPage() {
  const { host, keeper, view, openFile } = useSession()
  const start = useStart()
  const samples = useSamples()
  const theme = useView(state => state.theme)
  const { failure, problems } = useStore(keeper)
  const empty = () => void keeper.startNew('New site')
  return (
    <div className="start">
      <main className="start-side">
        <h1>Slabwright</h1>
        <p className="lead">
          From the first sketch to the last stamped pour: the plan, its sun and shade, its pours and its numbers in one
          file.
        </p>
        <button type="button" className="btn main big" onClick={empty}>
          <Icon name="slab" />
          New site
        </button>
        <button type="button" className="btn big" onClick={openFile}>
          <Icon name="ledger" />
          Open a file
        </button>
        {failure ? <p className="trouble">{fileWords(failure)}</p> : null}
        {problems.length > 0 ? (
          <ul className="trouble">
            {problems.slice(0, 4).map(problem => (
              <li key={`${problem.code} ${problem.field ?? ''}`}>{problem.message}</li>
            ))}
          </ul>
        ) : null}
        <Recoveries start={start} />
        <h2>Lately</h2>
        {start.recent.length === 0 ? (
          <p className="quiet">Nothing yet. What you keep is listed here.</p>
        ) : (
          <ul className="lately">
            {start.recent.map(({ fileId, name, openedAt, missing }) => (
              <li key={fileId}>
                <button
                  type="button"
                  disabled={missing}
                  onClick={() => void host.openFile({ fileId }).then(keeper.take)}
                >
                  <span>{name}</span>
                  <span>{missing ? 'not there any more' : day.format(new Date(openedAt))}</span>
                </button>
              </li>
            ))}
          </ul>
        )}
        <p className="quiet">Kept on this computer. Nothing leaves it unless you send it.</p>
      </main>
      <section className="start-samples" aria-label="Sample sites">
        <h2>Sample sites</h2>
        <ul className="shelf">
          {samples.map(({ sampleId, name, site }) => (
            <li key={sampleId}>
              <button
                type="button"
                className="sample"
                onClick={() => void host.openSample({ sampleId }).then(keeper.take)}
              >
                {site ? <SitePicture site={site} date={start.today} /> : <span className="site-picture" />}
                <b>{site?.name ?? name}</b>
                <span>{site ? describe(site) : 'reading'}</span>
              </button>
            </li>
          ))}
          <li>
            <button type="button" className="sample blank" onClick={empty}>
              <Icon name="slab" />
              <b>Empty sheet</b>
              <span>start with a length</span>
            </button>
          </li>
        </ul>
      </section>
      <footer className="start-foot">
        <fieldset>
          <legend>Theme</legend>
          {themes.map(each => (
            <label key={each}>
              <input
                type="radio"
                name="theme"
                checked={theme === each}
                onChange={() => view.setState({ theme: each })}
              />
              {each}
            </label>
          ))}
        </fieldset>
      </footer>
    </div>
  )
}

function Recoveries({ start }: { readonly start: StartInfo }) {
  const { host, keeper } = useSession()
  if (start.recoveries.length === 0) return null
  return (
    <section className="recoveries" aria-label="Unsaved work">
      <h2>Not saved last time</h2>
      <ul className="lately">
        {start.recoveries.map(({ recoveryId, title, savedAt }) => (
          <li key={recoveryId}>
            <button type="button" onClick={() => void host.openRecovery({ recoveryId }).then(keeper.take)}>
              <span>{title}</span>
              <span>{day.format(new Date(savedAt))}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
