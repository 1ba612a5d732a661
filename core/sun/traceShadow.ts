/** The shadow of one solid on a level plane, as closed cycles for a non-zero fill. */
import { crownShadow } from './crownShadow'
import type { Prism, Screen, Solid } from './solid'
import { sweepRing } from './sweepRing'

/**
 * Receives x0, y0, x1, y1 … in the first `count` numbers; they are overwritten after it returns.
 * `alone`: the cycle winds negatively nowhere; not so for a courtyard's, which needs the outline's beside it.
 */
export type TakeCycle = (cycle: Float64Array, count: number, alone: boolean) => void

/** Reused from call to call: a day's raster traces thousands of cycles. */
let scratch = new Float64Array(1024)

const room = (count: number): Float64Array => {
  if (scratch.length < count) scratch = new Float64Array(count * 2)
  return scratch
}

const tracePrism = (prism: Prism, levelM: number, kx: number, ky: number, take: TakeCycle): void => {
  const bottomM = Math.max(0, prism.bottomM - levelM)
  const sweepM = prism.topM - levelM - bottomM
  const alone = prism.rings.length === 1
  for (const ring of prism.rings) {
    const out = room(ring.length * 2)
    take(out, sweepRing(ring, bottomM * kx, bottomM * ky, sweepM * kx, sweepM * ky, out, 0), alone)
  }
}

/** Hands the cycle on counter-clockwise; one without area throws no shade. */
const takeCounterClockwise = (cycle: Float64Array, count: number, take: TakeCycle): void => {
  let doubleArea = 0
  for (let i = 0, j = count - 2; i < count; j = i, i += 2)
    doubleArea += cycle[j]! * cycle[i + 1]! - cycle[i]! * cycle[j + 1]!
  if (doubleArea === 0) return
  if (doubleArea < 0)
    for (let i = 0, j = count - 2; i < j; i += 2, j -= 2) {
      const x = cycle[i]!
      const y = cycle[i + 1]!
      cycle[i] = cycle[j]!
      cycle[i + 1] = cycle[j + 1]!
      cycle[j] = x
      cycle[j + 1] = y
    }
  take(cycle, count, true)
}

/** A flat face, cut off at the plane, thrown along the sun's rays. */
const traceFace = (face: Float64Array, levelM: number, kx: number, ky: number, take: TakeCycle): void => {
  const out = room(face.length * 2)
  let o = 0
  const count = face.length
  for (let i = 0; i < count; i += 3) {
    const x = face[i]!
    const y = face[i + 1]!
    const up = face[i + 2]! - levelM
    const j = (i + 3) % count
    const nextUp = face[j + 2]! - levelM
    if (up >= 0) {
      out[o++] = x + up * kx
      out[o++] = y + up * ky
    }
    if (up >= 0 !== nextUp >= 0) {
      const share = up / (up - nextUp)
      out[o++] = x + (face[j]! - x) * share
      out[o++] = y + (face[j + 1]! - y) * share
    }
  }
  if (o >= 6) takeCounterClockwise(out, o, take)
}

const traceScreen = (screen: Screen, levelM: number, kx: number, ky: number, take: TakeCycle): void => {
  const low = Math.max(0, screen.bottomM - levelM)
  const high = screen.topM - levelM
  const [ax, ay] = screen.from
  const [bx, by] = screen.to
  const out = room(8)
  out[0] = ax + low * kx
  out[1] = ay + low * ky
  out[2] = bx + low * kx
  out[3] = by + low * ky
  out[4] = bx + high * kx
  out[5] = by + high * ky
  out[6] = ax + high * kx
  out[7] = ay + high * ky
  takeCounterClockwise(out, 8, take)
}

/**
 * Traces the shadow of what stands above z = `levelM`.
 * @param kx, ky shadow per meter of height
 */
export const traceShadow = (solid: Solid, levelM: number, kx: number, ky: number, take: TakeCycle): void => {
  if (solid.topM <= levelM) return
  switch (solid.form) {
    case 'prism':
      tracePrism(solid, levelM, kx, ky, take)
      break
    case 'faces':
      for (const face of solid.faces) traceFace(face, levelM, kx, ky, take)
      break
    case 'screen':
      traceScreen(solid, levelM, kx, ky, take)
      break
    case 'crown': {
      const out = room(384)
      const count = crownShadow(solid, levelM, kx, ky, out)
      if (count > 0) take(out, count, true)
    }
  }
}
