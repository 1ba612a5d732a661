import { PagePicture } from '../../sheets/SheetPages'
import type { LivePlan } from '../../store/livePlan'
import { useClient } from './clientStore'
import { useBidPages, useClientSheet } from './useClientSheet'

/** The drawing as it will lie on the client's table. */
export function ClientSheetPage({ live }: { readonly live: LivePlan }) {
  const [state] = useClient(live.site)
  const sheet = useClientSheet(live, state)
  const bidPages = useBidPages(live, state)
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolled region is moved by keys
    <section className="sheet-pages" aria-label="Drawing for the client" tabIndex={0}>
      {sheet ? (
        <figure className="sheet-page" id="page-client">
          <PagePicture picture={{ id: 'client', name: 'Drawing for the client', ...sheet }} />
          <figcaption>Drawing for the client, {sheet.scale.name}</figcaption>
        </figure>
      ) : (
        <p>Nothing is drawn yet.</p>
      )}
      {sheet && bidPages.length > 0 ? (
        <figure className="sheet-page" id="page-bid">
          {bidPages.map((page, i) => (
            <PagePicture
              // biome-ignore lint/suspicious/noArrayIndexKey: a page is known by its number
              key={i}
              picture={{ id: `bid-${i + 1}`, name: `Bid, page ${i + 1}`, ...page }}
            />
          ))}
          <figcaption>Bid</figcaption>
        </figure>
      ) : null}
    </section>
  )
}
