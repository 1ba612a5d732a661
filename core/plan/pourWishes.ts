/** What the joints of a part should keep to, remembered as long as nothing that bears on it changes. */
import type { PourPart } from '../../shared/document/pours'
import type { Site } from '../../shared/document/site'
import { settingValue } from '../../shared/settings'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import type { JointWishes } from '../pours/wishes/jointWishes'
import { resolveWishes } from '../pours/wishes/resolveWishes'
import type { Memo } from './memo'

export function pourWishes(memo: Memo, site: Site, slab: ResolvedSlab, part: PourPart): JointWishes | undefined {
  const source = site.slabs.find(({ id }) => id === slab.id)
  if (!source) return undefined
  const own = site.wishes.filter(({ slabId }) => slabId === slab.id)
  const hangsOnJoints = own.some(
    wish => wish.kind === 'required' && wish.line.some(({ anchor }) => anchor.on === 'joint'),
  )
  const accepted = hangsOnJoints ? site.accepted.find(row => row.slabId === slab.id && row.part === part) : undefined
  const finish = site.finishes.find(({ id }) => id === source.finishId)
  const inputs = [slab, finish, accepted, settingValue(site.settings, 'leastPourWidthM'), ...own]
  return memo.part('wishes', `${slab.id} ${part}`, inputs, () => resolveWishes(site, source, slab, part, accepted))
}
