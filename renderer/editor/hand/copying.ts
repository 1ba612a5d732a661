/** Copies of what is chosen: within a site, between sites, between windows. */
import { copySelection, pasteFrom, standsAlone } from '../../../core/document/commands/copySelection'
import type { Command } from '../../../core/document/commands/editSite'
import { selectionBox } from '../../../core/document/commands/lineUp'
import { chosenEntities } from '../../../core/document/commands/siteEntities'
import { type Copied, readCopy, writeCopy } from '../../../core/document/copyText'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Desk } from './desk'
import type { Turns } from './turns'

/** Two feet to the right and down, so that the copy is seen. */
const aside: Pt = [0.6096, -0.6096]

export interface Copying {
  /** Also as text for the clipboard; null where nothing is chosen that can be copied: what follows an edge can't. */
  copy(): string | null
  /** What was copied last, or a text off the clipboard: of this site beside it, of another one about `at`. */
  paste(text?: string, at?: Pt): void
}

export function createCopying(
  { store, view, committed, selection, refuse, commit, tell }: Desk,
  turns: Turns,
): Copying {
  let copied: Copied | null = null
  /** What belongs to a slab goes to the one that is chosen, else to the first. */
  const slabFor = ({ slabs }: Site): Id | undefined =>
    (slabs.find(({ id }) => selection().includes(id)) ?? slabs[0])?.id
  return {
    copy() {
      const now = committed()
      if (!now || selection().length === 0) return null
      if (!chosenEntities(now, selection()).some(standsAlone)) {
        refuse([{ code: 'nothingChosen', severity: 'stop', values: { done: 'copied' } }])
        return null
      }
      copied = { site: now, ids: [...selection()] }
      store.setState({ hasCopy: true })
      tell('Copied.')
      return writeCopy(now, selection())
    },
    paste(text, at) {
      const now = committed()
      if (!now) return
      const read = text === undefined ? null : readCopy(text)
      if (read && !read.ok) {
        refuse(read.error)
        return
      }
      const from = read ? read.value : copied
      if (!from) return
      const made =
        from.site.id === now.id
          ? commit('copy', pasteHere(now, from))
          : commit('paste', pasteFrom(from.site, from.ids, toMiddle(from, at), slabFor(now)))
      if (!made) return
      // What was pasted is shaped next; what is half drawn is drawn on.
      const { action, drawing, options } = store.getState()
      if (action !== 'select' && (drawing?.placed.length ?? 0) === 0) turns.start('select', options)
      view.setState({ selection: made })
    },
  }
}

/** In its own site a copy is made of what stands there now; what was deleted since comes out of the copy. */
const pasteHere = (now: Site, { site, ids }: Copied): Command =>
  chosenEntities(now, ids).length === ids.length ? copySelection(ids, aside) : pasteFrom(site, ids, aside)

const toMiddle = ({ site, ids }: Copied, at: Pt | undefined): Pt => {
  const box = selectionBox(site, ids)
  return at && box ? [at[0] - (box.minX + box.maxX) / 2, at[1] - (box.minY + box.maxY) / 2] : aside
}
