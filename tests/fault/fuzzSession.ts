import { readFileSync } from 'node:fs'
import { nodeFiles } from '../../electron/files/fileLayer'
import { mulberry32 } from '../geometry/mulberry32'
import { faultyFiles } from './faultyFiles'
import { hostFolders, mustHave, siteText } from './hostFolders'

const codes = ['EIO', 'ENOSPC', 'EACCES', 'EBUSY', 'ENOENT', 'short'] as const

/**
 * One session of random saves and autosaves, some at once, with faults at random operations, cut off at the end. Gives
 * what does not hold afterwards: the file is whole and is the last text reported as saved (or one tried since, where
 * the report was unsure); the newest text reported as kept is in the file or offered.
 */
export async function fuzzSession(seed: number): Promise<string[]> {
  const random = mulberry32(seed)
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T
  const disk = hostFolders()
  try {
    const first = siteText('Text 0')
    const path = disk.put('yard.slabwright.json', first)
    const texts = [first]
    const { layer } = faultyFiles(Math.floor(random() * 120), {
      code: pick(codes),
      done: pick(['before', 'after']),
      lasts: pick(['once', 'once', 'for good']),
    })
    const window = disk.start({ layer, crashed: true }).openWindow()
    const opened = await window.openPath(path)
    if (!opened.ok) return readFileSync(path, 'utf8') === first ? [] : ['a file that did not open was changed']
    const { docId } = opened.value
    let saved = 0
    const possible = new Set([0])
    let kept = 0
    const steps = 3 + Math.floor(random() * 10)
    for (let step = 0; step < steps; step += 1) {
      const together = 1 + Math.floor(random() * 3)
      await Promise.all(
        Array.from({ length: together }, async () => {
          const order = texts.push(siteText(`Text ${texts.length}`)) - 1
          const text = texts[order] as string
          if (random() < 0.5) {
            const report = mustHave(await window.autosave({ docId, title: 'yard', text, order }))
            if (report.outcome === 'saved') kept = Math.max(kept, order)
          } else {
            const report = mustHave(await window.save({ docId, text, order, overwrite: true }))
            if (report.outcome === 'saved') {
              saved = order
              possible.clear()
            }
            if (report.outcome !== 'notSaved') possible.add(order)
          }
        }),
      )
    }
    const faults: string[] = []
    const held = texts.indexOf(readFileSync(path, 'utf8'))
    if (!possible.has(held)) faults.push(`the file holds ${held}, reported were ${[...possible].join(', ')}`)
    const next = disk.start({ layer: nodeFiles }).openWindow()
    const offered: number[] = []
    for (const { recoveryId } of await next.listRecoveries()) {
      offered.push(texts.indexOf(mustHave(await next.openRecovery({ recoveryId })).text))
    }
    if (offered.includes(-1)) faults.push('something never written is offered')
    if (kept > saved && !offered.some(order => order >= kept) && held < kept) {
      faults.push(`${kept} was reported as kept; the file holds ${held}, offered are ${offered.join(', ')}`)
    }
    return faults
  } finally {
    disk.remove()
  }
}
