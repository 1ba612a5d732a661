import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type KeptVersion, versionsToDrop } from '../../electron/files/keptVersions'

const version = (minute: number): KeptVersion => {
  const savedAt = new Date(minute * 60_000).toISOString()
  return { versionId: `${savedAt.replace(/[-:.]/g, '')}-0123456789abcdef`, savedAt }
}
const dayOf = (savedAt: string) => savedAt.slice(0, 10)

describe('thinning kept versions', () => {
  it('drops nothing up to twenty', () => {
    expect(
      versionsToDrop(
        Array.from({ length: 20 }, (_, i) => version(i)),
        dayOf,
      ),
    ).toEqual([])
  })

  it('keeps the newest twenty and the last of each day, and drops all others', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 0, max: 20_000 }), { maxLength: 80 }), minutes => {
        const versions = minutes.map(version)
        const dropped = new Set(versionsToDrop(versions, dayOf).map(({ versionId }) => versionId))
        const kept = versions.filter(({ versionId }) => !dropped.has(versionId))
        const falling = [...minutes].sort((a, b) => b - a)
        const wanted = new Set([
          ...falling.slice(0, 20),
          ...new Map([...falling].reverse().map(minute => [Math.floor(minute / 1440), minute])).values(),
        ])
        expect(new Set(kept.map(({ versionId }) => versionId))).toEqual(
          new Set([...wanted].map(minute => version(minute).versionId)),
        )
      }),
      { seed: 7, numRuns: 200 },
    )
  })
})
