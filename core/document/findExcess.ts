import { limits } from '../../shared/limits'
import { onceFrozen } from '../../shared/onceFrozen'
import type { Finding } from '../../shared/problem'
import { pictureSize } from './pictureSize'

type Limit = keyof typeof limits

const exceeded = (limit: Limit, found: number, field?: string): Finding => ({
  code: 'limitExceeded',
  severity: 'stop',
  values: { limit, found, most: limits[limit] },
  ...(field === undefined ? {} : { field }),
})

const isPoint = (list: readonly unknown[]): list is readonly [number, number] =>
  list.length === 2 && typeof list[0] === 'number' && typeof list[1] === 'number'

const lengthOf = (value: unknown): number => (Array.isArray(value) ? value.length : 0)

const entriesOf = (value: unknown): readonly [string, unknown][] =>
  typeof value === 'object' && value !== null ? Object.entries(value) : []

interface Counted {
  vertices: number
  longestRing: number
  longestList: number
  minX: number
  minY: number
  maxX: number
  maxY: number
}

const nothing: Readonly<Counted> = {
  vertices: 0,
  longestRing: 0,
  longestList: 0,
  minX: Infinity,
  minY: Infinity,
  maxX: -Infinity,
  maxY: -Infinity,
}

/** Walks a value of any shape without recursion: a file may nest as deep as it likes. */
const count = (root: unknown): Readonly<Counted> => {
  const counted = { ...nothing }
  const waiting: unknown[] = [root]
  while (waiting.length > 0) {
    const value = waiting.pop()
    if (Array.isArray(value)) {
      counted.longestList = Math.max(counted.longestList, value.length)
      if (value.length > limits.listRows) return counted
      if (isPoint(value)) {
        counted.minX = Math.min(counted.minX, value[0])
        counted.maxX = Math.max(counted.maxX, value[0])
        counted.minY = Math.min(counted.minY, value[1])
        counted.maxY = Math.max(counted.maxY, value[1])
      } else for (const entry of value) if (typeof entry === 'object' && entry !== null) waiting.push(entry)
    } else if (typeof value === 'object' && value !== null) {
      for (const [key, entry] of Object.entries(value)) {
        if (key === 'vertices' || key === 'line') {
          counted.vertices += lengthOf(entry)
          counted.longestRing = Math.max(counted.longestRing, lengthOf(entry))
        }
        // A set of weekdays may hold two numbers and still be no point.
        if (typeof entry === 'object' && entry !== null && key !== 'weekdays') waiting.push(entry)
      }
    }
  }
  return counted
}

const join = (a: Readonly<Counted>, b: Readonly<Counted>): Readonly<Counted> => ({
  vertices: a.vertices + b.vertices,
  longestRing: Math.max(a.longestRing, b.longestRing),
  longestList: Math.max(a.longestList, b.longestList),
  minX: Math.min(a.minX, b.minX),
  minY: Math.min(a.minY, b.minY),
  maxX: Math.max(a.maxX, b.maxX),
  maxY: Math.max(a.maxY, b.maxY),
})

const countOnce = onceFrozen((entity: object): Readonly<Counted> => count(entity))

/** As `count` of a list, row by row. */
const countRows = (rows: readonly unknown[]): Readonly<Counted> =>
  rows.reduce(
    (sum: Readonly<Counted>, row) => (typeof row === 'object' && row !== null ? join(sum, countOnce(row)) : sum),
    { ...nothing, longestList: rows.length },
  )

/** Of rows that can no longer change: an edit leaves most lists alone. */
const countRowsOnce = onceFrozen(countRows)

/** As `count` of the whole, entity by entity. */
const countSite = (raw: object): Readonly<Counted> => {
  let total = nothing
  for (const [key, value] of Object.entries(raw)) {
    if (total.longestList > limits.listRows) break
    if (typeof value !== 'object' || value === null) continue
    const isRing = key === 'line' || key === 'vertices'
    if (isRing || (Array.isArray(value) && value.length > limits.listRows)) total = join(total, count({ [key]: value }))
    else if (!Array.isArray(value) || isPoint(value)) total = join(total, countOnce(value))
    else total = join(total, value.every(Object.isFrozen) ? countRowsOnce(value) : countRows(value))
  }
  return total
}

const findPictureExcess = (assets: unknown): Finding | undefined => {
  for (const [key, asset] of entriesOf(assets)) {
    const base64 = (asset as { base64?: unknown } | null)?.base64
    if (typeof base64 !== 'string') continue
    const field = `/assets/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`
    const bytes = Math.floor((base64.replace(/=+$/, '').length * 3) / 4)
    if (bytes > limits.assetBytes) return exceeded('assetBytes', bytes, field)
    const size = pictureSize(base64)
    const pixels = size === undefined ? 0 : Math.max(size.width, size.height)
    if (pixels > limits.assetPixels) return exceeded('assetPixels', pixels, field)
  }
  return undefined
}

/** The first limit of shared/limits that a document exceeds, looked for before its fields are read one by one. */
export const findExcess = (raw: object): Finding | undefined => {
  const { casters, accepted, assets } = raw as { casters?: unknown; accepted?: unknown; assets?: unknown }
  if (lengthOf(casters) > limits.casters) return exceeded('casters', lengthOf(casters), '/casters')
  const pours = Array.isArray(accepted)
    ? accepted.reduce((sum: number, part: { pours?: unknown } | null) => sum + lengthOf(part?.pours), 0)
    : 0
  if (pours > limits.pours) return exceeded('pours', pours, '/accepted')
  const counted = countSite({ ...raw, assets: undefined })
  if (counted.longestRing > limits.verticesPerRing) return exceeded('verticesPerRing', counted.longestRing)
  if (counted.vertices > limits.verticesPerSite) return exceeded('verticesPerSite', counted.vertices)
  if (counted.longestList > limits.listRows) return exceeded('listRows', counted.longestList)
  const extentM = Math.max(counted.maxX - counted.minX, counted.maxY - counted.minY)
  if (Number.isFinite(extentM) && extentM > limits.extentM) return exceeded('extentM', extentM)
  return findPictureExcess(assets)
}
