import { join } from 'node:path'
import type { FileLayer } from './fileLayer'
import { isRunning } from './isRunning'
import { tempOwner } from './tempNames'

const dayMs = 24 * 60 * 60 * 1000

/**
 * Removes what saves that were cut short left in a folder: parts of dead processes of this machine, and parts of other
 * machines a day after their last change. Never fails: what cannot be removed is left for the next time.
 */
export async function sweepTemps(layer: FileLayer, folder: string, nowMs: number): Promise<number> {
  let swept = 0
  for (const name of await layer.list(folder).catch(() => [])) {
    const owner = tempOwner(name)
    if (owner === null) continue
    const path = join(folder, name)
    const isLeftBehind = owner.sameMachine
      ? !isRunning(owner.pid)
      : nowMs - ((await layer.facts(path).catch(() => null))?.changedMs ?? nowMs) > dayMs
    if (!isLeftBehind) continue
    await layer.remove(path).then(
      () => (swept += 1),
      () => {},
    )
  }
  return swept
}
