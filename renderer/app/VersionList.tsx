import { useEffect, useState } from 'react'
import { Heading } from 'react-aria-components'
import { readSite } from '../../core/document/readSite'
import type { Site } from '../../shared/document/site'
import type { FileFailure, HostOutput } from '../../shared/host'
import { describeSite } from './describeSite'
import { fileWords } from './fileWords'
import { printClock } from './printClock'
import { SitePicture } from './SitePicture'
import { useCommitted, useSession } from './session'

const day = new Intl.DateTimeFormat('en-US', { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' })
const shortDay = new Intl.DateTimeFormat('en-US', { day: 'numeric', month: 'short' })

type Version = HostOutput<'listVersions'>[number]

function byDay(versions: readonly Version[]): ReadonlyMap<string, readonly Version[]> {
  const days = new Map<string, Version[]>()
  for (const version of versions) {
    const name = day.format(new Date(version.savedAt))
    days.set(name, [...(days.get(name) ?? []), version])
  }
  return days
}

/** What can be read of a version: the site, or why not; null while it is fetched. */
type Looked = { readonly site: Site } | { readonly why: string } | null

function useVersion(versionId: string | undefined): Looked {
  const { host, keeper } = useSession()
  const [looked, setLooked] = useState<{ readonly versionId: string; readonly found: Looked } | null>(null)
  useEffect(() => {
    const { docId } = keeper.getState()
    if (versionId === undefined || docId === null) return
    let isGone = false
    void host.versionText({ docId, versionId }).then(answer => {
      if (isGone) return
      const read = answer.ok ? readSite(answer.value.text) : null
      const found =
        read?.ok === true
          ? { site: read.value }
          : { why: answer.ok ? 'This version cannot be read any more.' : fileWords(answer.error) }
      setLooked({ versionId, found })
    })
    return () => {
      isGone = true
    }
  }, [host, keeper, versionId])
  return looked?.versionId === versionId ? (looked?.found ?? null) : null
}

/** The versions kept of the file, newest first; one is looked at without changing anything, and may be taken back. */
export function VersionList({
  versions,
  failure,
  close,
}: {
  readonly versions: readonly Version[]
  readonly failure: FileFailure | null
  readonly close: () => void
}) {
  const { site: sites, start } = useSession()
  const current = useCommitted()
  const [chosen, setChosen] = useState(versions[0])
  const looked = useVersion(chosen?.versionId)
  const takeBack = () => {
    if (chosen === undefined || looked === null || !('site' in looked)) return
    const { site } = looked
    const at = new Date(chosen.savedAt)
    // Ids given out since are not given out again.
    sites.apply(`version of ${shortDay.format(at)}, ${printClock(at, 'second')}`, now => ({
      ...site,
      id: now.id,
      nextId: Math.max(now.nextId, site.nextId),
    }))
    close()
  }
  return (
    <>
      <Heading slot="title">Kept versions</Heading>
      {chosen === undefined ? (
        <p>
          {failure
            ? fileWords(failure)
            : 'None yet. Each save to the file keeps one: the last 20, and the last of each day.'}
        </p>
      ) : (
        <div className="versions">
          <nav aria-label="Versions" className="version-days">
            {[...byDay(versions)].map(([name, rows]) => (
              <section key={name} aria-label={name}>
                <h3>{name}</h3>
                <ul className="lately">
                  {rows.map(version => (
                    <li key={version.versionId}>
                      <button
                        type="button"
                        aria-pressed={version.versionId === chosen.versionId}
                        onClick={() => setChosen(version)}
                      >
                        <span>{printClock(new Date(version.savedAt), 'second')}</span>
                      </button>
                    </li>
                  ))}
                </ul>
              </section>
            ))}
          </nav>
          <figure className="version-look" aria-busy={looked === null}>
            {looked !== null && 'site' in looked ? (
              <SitePicture key={chosen.versionId} site={looked.site} date={start.today} />
            ) : (
              <span className="site-picture" />
            )}
            <figcaption>
              {looked === null ? (
                'reading'
              ) : 'why' in looked ? (
                looked.why
              ) : (
                <>
                  <b>{looked.site.name}</b>
                  <span>{describeSite(looked.site)}</span>
                  {current === null ? null : <span className="quiet">Now: {describeSite(current)}</span>}
                </>
              )}
            </figcaption>
          </figure>
        </div>
      )}
      <div className="dialog-acts">
        <button type="button" className="btn" onClick={close}>
          Leave it
        </button>
        {chosen === undefined ? null : (
          <button
            type="button"
            className="btn main"
            disabled={looked === null || !('site' in looked)}
            onClick={takeBack}
          >
            Take it back
          </button>
        )}
      </div>
      {chosen === undefined ? null : (
        <p className="quiet under">Taken back, it is one step that undo reverses; the file changes when you save.</p>
      )}
    </>
  )
}
