import { freeze } from 'immer'
import { useEffect, useRef, useState } from 'react'
import { readSite } from '../../core/document/readSite'
import type { Site } from '../../shared/document/site'
import type { StartInfo } from '../../shared/host'
import { describeSite } from './describeSite'
import { SitePicture } from './SitePicture'
import { useSession } from './session'
import { whenIdle } from './whenIdle'

const idle = (): Promise<void> =>
  new Promise(done => {
    whenIdle(done)
  })

let last: Promise<unknown> = Promise.resolve()

/** One after the other: who opens a site while the cards are read waits for one of them, not for all. */
function inTurn(act: () => Promise<void>): void {
  // A card that could not be read keeps none behind it waiting.
  last = last.then(act, act)
}

/** A sample by its name at once; its picture is read and drawn when it is in view and the page is idle. */
export function SampleCard({ sample }: { readonly sample: StartInfo['samples'][number] }) {
  const { host, keeper, start } = useSession()
  const { sampleId, name } = sample
  const card = useRef<HTMLLIElement>(null)
  const [site, setSite] = useState<Site | null>(null)
  const [isSettled, setIsSettled] = useState(false)
  useEffect(() => {
    if (!card.current) return
    let isGone = false
    const read = async () => {
      await idle()
      if (isGone) return
      const answer = await host.sampleText({ sampleId })
      if (isGone) return
      await idle()
      if (isGone) return
      const found = answer.ok ? readSite(answer.value.text) : null
      // What cannot change is worked out once, for its words and its picture.
      if (found?.ok) setSite(freeze(found.value, true))
      setIsSettled(true)
    }
    const observer = new IntersectionObserver(entries => {
      if (!entries.some(entry => entry.isIntersecting)) return
      observer.disconnect()
      inTurn(read)
    })
    observer.observe(card.current)
    return () => {
      isGone = true
      observer.disconnect()
    }
  }, [host, sampleId])
  return (
    <li ref={card}>
      <button type="button" className="sample" onClick={() => void keeper.takeFrom(host.openSample({ sampleId }))}>
        {site ? <SitePicture site={site} date={start.today} /> : <span className="site-picture" />}
        <b>{name}</b>
        <span>{site ? describeSite(site) : isSettled ? 'no picture' : 'reading'}</span>
      </button>
    </li>
  )
}
