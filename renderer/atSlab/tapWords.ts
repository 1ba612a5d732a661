/** Taps as the log tells them. */
import type { Measures } from '../../core/units/measures'
import type { LogTap } from '../../shared/document/day'

const packages = (count: number): string => (count === 1 ? '1 package' : `${count} packages`)

/** The step of undo that freezes a pour. */
export const endName = (number: string): string => `end of pour ${number}`

export function tellTap(tap: LogTap, print: Measures): string {
  const load = `Load ${tap.load ?? ''}`
  const strip = `Strip ${tap.strip ?? ''}`
  const minutes = Math.round(tap.minutes ?? 0)
  switch (tap.what) {
    case 'batched':
      return `${load} batched`
    case 'onSite':
      return `${load} on site`
    case 'dosed':
      return tap.count ? `${load}: ${packages(tap.count)} of retarder in, ${minutes} min` : `${load}: no retarder`
    case 'placed':
      return `${strip} placed`
    case 'ready':
      return `${strip} ready`
    case 'stamped':
      return `${strip} stamped`
    case 'come': {
      const out = tap.outM3 === undefined ? '' : `, ${print.volume(tap.outM3)} out`
      return `Concrete has come ${print.length(tap.comeM ?? 0)}${out}`
    }
    case 'late':
      return `${load} ${minutes} min later`
    case 'handShort':
      return 'One hand short'
    case 'handBack':
      return 'One hand back'
    case 'rain':
      return tap.minutes === undefined ? 'No rain after all' : minutes === 0 ? 'Rain' : `Rain in ${minutes} min`
    case 'done':
      return tap.comeM === undefined ? 'Pour ended' : `Stopped at ${print.length(tap.comeM)}`
  }
}
