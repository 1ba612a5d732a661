/** The cuts that one straight line makes. */
import { type AtTouch, type Chord, findChords } from '../region/chords'
import { type Chain, type CutMeasure, isChain, measureCut } from '../region/cut'
import type { CutRegion } from '../region/cutRegion'
import type { Direction, SearchContext } from './searchContext'

export interface LineCut {
  readonly chain: Chain
  readonly measure: CutMeasure
  readonly lengthM: number
  readonly t0: number
  readonly t1: number
}

interface Line extends Direction {
  readonly offset: number
}

const chainsOf = (chords: readonly Chord[]): Chain[] => {
  const chains: Chain[] = []
  for (let i = 0; i < chords.length; i++) {
    const first = chords[i]!
    let j = i
    while (j + 1 < chords.length && chords[j]!.b.ring !== first.a.ring && chords[j + 1]!.a.ring === chords[j]!.b.ring)
      j++
    if (chords[j]!.b.ring !== first.a.ring) continue
    const chain = chords.slice(i, j + 1)
    if (isChain(chain)) chains.push(chain)
  }
  return chains
}

const cutAlong = (region: CutRegion, chain: Chain, line: Line | undefined): LineCut | null => {
  const measure = measureCut(region, chain, line)
  if (!measure) return null
  let lengthM = 0
  for (const chord of chain) lengthM += chord.lengthM
  return { chain, measure, lengthM, t0: chain[0]!.t0, t1: chain[chain.length - 1]!.t1 }
}

/** All cuts along one line, seen from one of its sides. */
export function cutsOnLine(
  region: CutRegion,
  { ux, uy }: Direction,
  offset: number,
  onIsAbove: boolean,
  context: SearchContext,
  atTouch: AtTouch = 'drop',
): LineCut[] {
  const chords = findChords(region, ux, uy, offset, onIsAbove, context.work, atTouch)
  const cuts: LineCut[] = []
  for (const chain of chainsOf(chords)) {
    const line = atTouch === 'drop' && chain.length === chords.length ? { ux, uy, offset } : undefined
    const cut = cutAlong(region, chain, line)
    if (cut) cuts.push(cut)
  }
  return cuts
}

const hasSameRings = (a: Chain, b: Chain): boolean =>
  a.length === b.length && a.every((chord, i) => chord.a.ring === b[i]!.a.ring)

/** The one of `chains` that continues `like`: the same rings, the greatest overlap with [t0, t1]. */
function mostOverlapping(chains: readonly Chain[], t0: number, t1: number, like: LineCut): number {
  let best = -1
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < chains.length; i++) {
    const chain = chains[i]!
    if (!hasSameRings(chain, like.chain)) continue
    const overlap = Math.min(chain[chain.length - 1]!.t1, t1) - Math.max(chain[0]!.t0, t0)
    if (overlap > most) {
      most = overlap
      best = i
    }
  }
  return best
}

/** The cut of `cuts` that continues `like`. */
export const continuing = (cuts: readonly LineCut[], like: LineCut): LineCut | null =>
  cuts[
    mostOverlapping(
      cuts.map(cut => cut.chain),
      like.t0,
      like.t1,
      like,
    )
  ] ?? null

/** The cut along another line of the same direction that continues `like` between t0 and t1. */
export function cutContinuing(
  region: CutRegion,
  { ux, uy }: Direction,
  offset: number,
  t0: number,
  t1: number,
  like: LineCut,
  context: SearchContext,
): LineCut | null {
  const chords = findChords(region, ux, uy, offset, true, context.work)
  const chains = chainsOf(chords)
  const chain = chains[mostOverlapping(chains, t0, t1, like)]
  return chain ? cutAlong(region, chain, chain.length === chords.length ? { ux, uy, offset } : undefined) : null
}
