/** Direct sun at one place through the day: 1 in the open, 0 in full shade, between under leaves. */
import type { SlabWeather } from './slabWeather'

export interface ShadeHistory {
  readonly fromMs: number
  readonly stepMs: number
  /** Transmitted share of direct sun at fromMs + i·stepMs, each 0…1. */
  readonly share: ArrayLike<number>
}

/** In the open all day. */
export const openSky: ShadeHistory = { fromMs: 0, stepMs: 1, share: [1] }

/** Straight line between the instants; before the first and after the last, the nearest. */
export function readShade(history: ShadeHistory, atMs: number): number {
  const last = history.share.length - 1
  const place = (atMs - history.fromMs) / history.stepMs
  if (place <= 0) return history.share[0]!
  if (place >= last) return history.share[last]!
  const index = Math.floor(place)
  return history.share[index]! + (place - index) * (history.share[index + 1]! - history.share[index]!)
}

/** The share in the middle of each step of the weather. */
export function shadeOnSteps(history: ShadeHistory, weather: SlabWeather): Float64Array {
  const shares = new Float64Array(weather.steps)
  for (let step = 0; step < weather.steps; step++)
    shares[step] = readShade(history, weather.fromMs + (step + 0.5) * weather.stepMs)
  return shares
}
