/** A site file, found and read. */
import { dirname } from 'node:path'
import { decodeUtf8 } from '../../core/document/decodeUtf8'
import type { HostAnswer } from '../../shared/host'
import { limits } from '../../shared/limits'
import { ok } from '../../shared/problem'
import { failed, reasonOf } from './fileFault'
import type { FileFacts } from './fileLayer'
import type { FileRoom } from './fileRoom'

export interface FoundFile {
  readonly path: string
  readonly facts: FileFacts
}

/** The file a path leads to; where pages are confined, only a plain file of the working folder. */
export async function findFile({ layer, folder, confined }: FileRoom, path: string): Promise<HostAnswer<FoundFile>> {
  try {
    const direct = await layer.facts(path)
    if (direct === null) return failed('vanished', path)
    const real = await layer.follow(path)
    if (confined) {
      const home = await layer.follow(folder)
      if (direct.kind === 'link' || dirname(real) !== home) return failed('notAFile', path)
    }
    const facts = direct.kind === 'link' ? await layer.facts(real) : direct
    if (facts === null) return failed('vanished', path)
    if (facts.kind !== 'file') return failed('notAFile', path)
    return ok({ path: real, facts })
  } catch (error) {
    return failed(reasonOf(error), path)
  }
}

/** Refused above `limits.fileBytes`, by what the system says and by what was read. */
export async function readText({ layer }: FileRoom, { path, facts }: FoundFile): Promise<HostAnswer<string>> {
  if (facts.bytes > limits.fileBytes) return failed('fileTooLarge', path)
  try {
    const bytes = await layer.read(path)
    if (bytes.byteLength > limits.fileBytes) return failed('fileTooLarge', path)
    const text = decodeUtf8(bytes)
    return text === undefined ? failed('notText', path) : ok(text)
  } catch (error) {
    return failed(reasonOf(error), path)
  }
}
