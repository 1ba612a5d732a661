import { createHash } from 'node:crypto'
import { hostname } from 'node:os'
import { basename, dirname, join } from 'node:path'

const machine = createHash('sha256').update(hostname()).digest('hex').slice(0, 8)
const pattern = /^\..*\.(?<machine>[0-9a-f]{8})-(?<pid>\d+)-\d+\.slabwright-part$/
let counter = 0

export interface TempOwner {
  readonly pid: number
  readonly sameMachine: boolean
}

/** A name beside the file that nobody else uses, carrying who is writing it. */
export function tempNameFor(path: string): string {
  counter += 1
  // Long names leave room for the ending: systems allow 255 bytes.
  const name = basename(path).slice(0, 60)
  return join(dirname(path), `.${name}.${machine}-${process.pid}-${counter}.slabwright-part`)
}

/** Who wrote a temporary file, or null when the name is not one. */
export function tempOwner(name: string): TempOwner | null {
  const groups = pattern.exec(name)?.groups
  if (groups === undefined) return null
  return { pid: Number(groups.pid), sameMachine: groups.machine === machine }
}
