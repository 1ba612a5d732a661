import { dirname } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import type { FileReason } from '../../shared/host'
import { mayPass, reasonOf, ShortWrite } from './fileFault'
import type { FileFacts, FileLayer } from './fileLayer'
import { tempNameFor } from './tempNames'

/**
 * Not `sure`: the rename was refused and the drive no longer says what the file holds; it is all old or all new.
 * Sure: the old file is whole.
 */
export type ReplaceReport =
  | { readonly replaced: true; readonly folderSynced: boolean; readonly facts: FileFacts }
  | { readonly replaced: false; readonly sure: boolean; readonly reason: FileReason }

export type Pause = (ms: number) => Promise<unknown>

/** Pauses before each further try: short enough for a waiting hand, long enough for a virus scanner. */
const pausesMs = [20, 80, 320] as const

/**
 * Puts `bytes` in the place of a file so that at every moment, also when the plug is pulled, the path holds all of the
 * old or all of the new: a new file in the same folder is written, counted and synced, renamed over the old one, and
 * the folder is synced. `path` must not be a link. Never rejects.
 */
export async function replaceFile(
  layer: FileLayer,
  path: string,
  bytes: Uint8Array,
  { mode = 0o644, pause = sleep }: { mode?: number | undefined; pause?: Pause | undefined } = {},
): Promise<ReplaceReport> {
  const written = await retry(pause, () => writeBeside(layer, path, bytes, mode))
  if (!written.ok) return { replaced: false, sure: true, reason: reasonOf(written.error) }
  const { temp, facts } = written.value
  const renamed = await retry(pause, () => layer.rename(temp, path))
  if (!renamed.ok) {
    const now = await layer.facts(path).then(
      found => ({ known: true, identity: found?.identity }),
      () => ({ known: false, identity: undefined }),
    )
    if (!now.known) return { replaced: false, sure: false, reason: reasonOf(renamed.error) }
    // Some drives rename and still report a failure: the file's identity tells.
    if (now.identity !== facts.identity) {
      await layer.remove(temp).catch(() => {})
      return { replaced: false, sure: true, reason: reasonOf(renamed.error) }
    }
  }
  const synced = await retry(pause, () => layer.syncFolder(dirname(path)))
  return { replaced: true, folderSynced: synced.ok, facts }
}

async function writeBeside(layer: FileLayer, path: string, bytes: Uint8Array, mode: number) {
  const temp = tempNameFor(path)
  try {
    const file = await layer.create(temp, mode)
    let facts: FileFacts
    try {
      await file.write(bytes)
      await file.sync()
      facts = await file.facts()
    } catch (error) {
      await file.close().catch(() => {})
      throw error
    }
    await file.close()
    if (facts.bytes !== bytes.byteLength) throw new ShortWrite(facts.bytes, bytes.byteLength)
    return { temp, facts }
  } catch (error) {
    await layer.remove(temp).catch(() => {})
    throw error
  }
}

type Tried<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: unknown }

async function retry<T>(pause: Pause, action: () => Promise<T>): Promise<Tried<T>> {
  for (let tries = 0; ; tries += 1) {
    try {
      return { ok: true, value: await action() }
    } catch (error) {
      const pauseMs = pausesMs[tries]
      if (pauseMs === undefined || !mayPass(error)) return { ok: false, error }
      await pause(pauseMs)
    }
  }
}
