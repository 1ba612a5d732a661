import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { SaveReport } from '../../shared/host'
import { type Fault, faultyFiles } from './faultyFiles'
import { hostFolders, mustHave, siteText } from './hostFolders'

const one = siteText('One')
const two = siteText('Two')
const three = siteText('Three')

const lasting = ['once', 'for good'] as const
const faults: Fault[] = [
  ...(['EIO', 'ENOSPC', 'ENOENT', 'short'] as const).flatMap(code =>
    lasting.map((lasts): Fault => ({ code, done: 'before', lasts })),
  ),
  ...lasting.map((lasts): Fault => ({ code: 'EIO', done: 'after', lasts })),
]

/** What a user was told about each step. */
interface Told {
  opened: boolean
  firstAutosave: SaveReport | null
  save: SaveReport | null
  secondAutosave: SaveReport | null
}

/** Opens One, changes it to Two, saves, changes it to Three, and is cut off. */
async function session(
  disk: ReturnType<typeof hostFolders>,
  path: string,
  layer: ReturnType<typeof faultyFiles>['layer'],
) {
  const told: Told = { opened: false, firstAutosave: null, save: null, secondAutosave: null }
  const window = disk.start({ layer, crashed: true }).openWindow()
  const site = await window.openPath(path)
  if (!site.ok) return told
  told.opened = true
  expect(site.value.text).toBe(one)
  const { docId } = site.value
  told.firstAutosave = mustHave(await window.autosave({ docId, title: 'yard', text: two, order: 1 }))
  told.save = mustHave(await window.save({ docId, text: two, order: 1 }))
  told.secondAutosave = mustHave(await window.autosave({ docId, title: 'yard', text: three, order: 2 }))
  return told
}

describe('a session cut off with a failing drive', () => {
  it.each(faults)(
    'leaves all old or all new, and what it was told is true: $code, $done it is done, $lasts',
    async fault => {
      let failing = 0
      for (; ; failing += 1) {
        const disk = hostFolders()
        try {
          const path = disk.put('yard.slabwright.json', one)
          const { layer, asked } = faultyFiles(failing, fault)
          const told = await session(disk, path, layer)
          const state = `${fault.code} at ${failing} (${asked[failing]}): ${JSON.stringify(told)}`
          const held = readFileSync(path, 'utf8')
          expect([one, two], state).toContain(held)
          if (told.save?.outcome === 'saved') expect(held === two, state).toBe(true)
          if (told.save?.outcome === 'notSaved' || told.save === null) expect(held === one, state).toBe(true)
          // The drive is whole again at the next start: everything reported as kept is offered.
          const next = disk.start().openWindow()
          const texts: string[] = []
          for (const { recoveryId } of await next.listRecoveries()) {
            texts.push(mustHave(await next.openRecovery({ recoveryId })).text)
            await next.leave()
          }
          if (told.secondAutosave?.outcome === 'saved') expect(texts, state).toContain(three)
          else if (told.firstAutosave?.outcome === 'saved' && held === one) expect(texts, state).toContain(two)
          if (asked.length <= failing) break
        } finally {
          disk.remove()
        }
      }
      // Opening, the save, its versions and both autosaves were all reached.
      expect(failing).toBeGreaterThan(40)
    },
  )
})
