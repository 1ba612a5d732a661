import { useEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import type { StartInfo } from '../../shared/host'
import { themes } from '../store/viewStore'
import { unnamed } from './emptySite'
import { fileStem } from './fileStem'
import { fileWords } from './fileWords'
import { Icon } from './Icon'
import { printClock } from './printClock'
import { SampleCard } from './SampleCard'
import { useSession, useView } from './session'

/** By then the host has let go of the page that stood here before, if that was left or lost. */
const laterMs = 7_000

/** What the host lists, asked again when the page is shown once more and when a page before it was let go of. */
function useStart(): { readonly start: StartInfo; readonly renew: () => void } {
  const { host, site, start } = useSession()
  const [listed, setListed] = useState(start)
  const [asked, setAsked] = useState(0)
  // biome-ignore lint/correctness/useExhaustiveDependencies: each asking is answered anew
  useEffect(() => {
    // What the page was started with is still true until a site has been open.
    if (asked === 0 && site.getState().rev === 0) return
    let isGone = false
    void host.start({}).then(answer => {
      if (!isGone && answer.ok) setListed(answer.value)
    })
    return () => {
      isGone = true
    }
  }, [host, asked])
  useEffect(() => {
    const timer = setTimeout(() => setAsked(times => times + 1), laterMs)
    return () => clearTimeout(timer)
  }, [])
  return { start: listed, renew: () => setAsked(times => times + 1) }
}

const weekday = new Intl.DateTimeFormat('en-US', { weekday: 'short' })
const printMoment = (at: Date): string => `${weekday.format(at)} ${printClock(at)}`
const day = new Intl.DateTimeFormat('en-US', { weekday: 'short', day: 'numeric', month: 'short' })

/** Whoever left a site stands at the head of this page. */
function useHeadFocus() {
  const { site } = useSession()
  const head = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    if (site.getState().rev > 0) head.current?.focus()
  }, [site])
  return head
}

/** Where nothing is open yet: what was open lately, samples as pictures, a new site. */
export function StartPage() {
  const { host, keeper, view, openFile } = useSession()
  const { start, renew } = useStart()
  const theme = useView(state => state.theme)
  const head = useHeadFocus()
  const empty = () => void keeper.startNew(unnamed)
  return (
    <div className="start">
      <main className="start-side">
        <h1 ref={head} tabIndex={-1}>
          Slabwright
        </h1>
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
        <NotOpened />
        <Recoveries start={start} renew={renew} toHead={() => head.current?.focus()} />
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
                  onClick={() => void keeper.takeFrom(host.openFile({ fileId }))}
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
          {start.samples.map(sample => (
            <SampleCard key={sample.sampleId} sample={sample} />
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

/** Why the file that was chosen would not open: brought into view, and said aloud. */
function NotOpened() {
  const { keeper } = useSession()
  const { failure, problems, problemsIn } = useStore(keeper)
  const box = useRef<HTMLDivElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: each answer is shown
  useEffect(() => box.current?.scrollIntoView({ block: 'nearest' }), [failure, problems])
  if (failure === null && problems.length === 0) return null
  return (
    <div ref={box} className="trouble" role="alert">
      {failure ? <p>{fileWords(failure)}</p> : null}
      {problemsIn === null ? null : <p>{problemsIn} did not open.</p>}
      <ul>
        {problems.slice(0, 4).map(problem => (
          <li key={`${problem.code} ${problem.field ?? ''}`}>
            {problem.message}
            {problem.hint === undefined ? null : <span> {problem.hint}</span>}
          </li>
        ))}
      </ul>
    </div>
  )
}

/** Work that was in no file when a program ended, to be gone on with or thrown away. */
function Recoveries({
  start,
  renew,
  toHead,
}: {
  readonly start: StartInfo
  readonly renew: () => void
  /** Where the focus goes with the row that is thrown away. */
  readonly toHead: () => void
}) {
  const { host, keeper, dialogs } = useSession()
  if (start.recoveries.length === 0) return null
  const letGo = (recoveryId: string, title: string) => {
    const drop = () =>
      void host.dropRecovery({ recoveryId }).then(() => {
        toHead()
        renew()
      })
    dialogs.setState({ open: { kind: 'letGo', title, drop } })
  }
  return (
    <section className="recoveries" aria-label="Unsaved work">
      <h2>Not saved last time</h2>
      <ul className="lately">
        {start.recoveries.map(({ recoveryId, title, savedAt, fileName }) => (
          <li key={recoveryId} className="with-act">
            <button type="button" onClick={() => void host.openRecovery({ recoveryId }).then(keeper.takeRecovered)}>
              <span>
                {title}
                <small>{fileName === undefined ? 'in no file' : `not yet in ${fileStem(fileName)}`}</small>
              </span>
              <span>{printMoment(new Date(savedAt))}</span>
            </button>
            <button
              type="button"
              className="act"
              aria-label={`Throw away ${title}`}
              onClick={() => letGo(recoveryId, title)}
            >
              Throw away
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
