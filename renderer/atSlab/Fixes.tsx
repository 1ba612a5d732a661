import { useMemo } from 'react'
import type { SlabFix } from '../../core/pours/slab/slabFixes'
import { tellFix } from '../../core/pours/slab/slabFixWords'
import type { Measures } from '../../core/units/measures'
import type { Happened } from './tapSlab'

/** What can be tapped once it is done; a stop is asked about first. */
function tapsOf(fix: SlabFix): readonly Happened[] {
  switch (fix.does) {
    case 'hands':
      return Array.from({ length: fix.more }, (): Happened => ({ what: 'handBack' }))
    case 'later':
      return [{ what: 'late', load: fix.load, minutes: fix.minutes }]
    case 'dose':
      return [{ what: 'dosed', load: fix.load, count: fix.packages, minutes: fix.doseMin }]
    case 'stop':
      return []
  }
}

/** What a foreman can do about it, each with the slack it leaves. */
export function Fixes({
  fixesOf,
  isShort,
  print,
  onTap,
  onStop,
}: {
  readonly fixesOf: () => readonly SlabFix[]
  /** Too few hands to go on. */
  readonly isShort: boolean
  readonly print: Measures
  readonly onTap: (what: Happened) => void
  readonly onStop: (comeM: number) => void
}) {
  const fixes = useMemo(fixesOf, [fixesOf])
  return (
    <section className="slab-fixes" aria-label="What helps">
      <h2>What helps</h2>
      {fixes.length === 0 ? <p>Nothing here would: keep the texture, save what can be saved.</p> : null}
      <ul>
        {fixes.map(fix => {
          const { what, tap } = tellFix(fix, print, isShort)
          return (
            <li key={fix.does}>
              <p>{what}</p>
              {tap === null ? null : (
                <button
                  type="button"
                  className="slab-btn"
                  onClick={() => (fix.does === 'stop' ? onStop(fix.comeM) : tapsOf(fix).forEach(onTap))}
                >
                  {tap}
                </button>
              )}
            </li>
          )
        })}
      </ul>
    </section>
  )
}
