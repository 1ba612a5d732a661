/** What a screen reader is told of what the keys do on the plan, in words for the ear. */
import { capitalize } from '../../../core/units/capitalize'
import type { Pt } from '../../../shared/document/primitives'
import type { UnitSystem } from '../../../shared/document/site'
import { type Drawing, fromMark, startFields } from '../actions/drawing'
import { printDirection, printTurn } from '../entry/directions'
import { sayLength } from '../entry/sayLength'

/** Made anew for each telling: the same words told twice are heard twice. */
export interface Said {
  readonly words: string
}

/** Where the arrow keys carry the aim, as the boxes beside it would read: "Length 12 ft, direction right". */
export function aimWords(drawing: Drawing, at: Pt, units: UnitSystem): string {
  const live = drawing.live(at)
  const told = drawing.fields.filter(({ id }) => live[id] !== undefined)
  const [fields, values] = told.length > 0 ? [told, live] : [startFields, fromMark(null, at)]
  const words = fields.map(({ id, label, reads }) => {
    const value = values[id] ?? 0
    const measure =
      reads === 'length' ? sayLength(value, units) : reads === 'turn' ? printTurn(value) : printDirection(value)
    return `${label.toLowerCase()} ${measure}`
  })
  return capitalize(words.join(', '))
}

/** A step of the arrow keys with something chosen: "Moved right 1 ft". One of the two is zero. */
export function movedWords([right, up]: Pt, units: UnitSystem): string {
  const way = right !== 0 ? (right > 0 ? 'right' : 'left') : up > 0 ? 'up' : 'down'
  return `Moved ${way} ${sayLength(Math.abs(right || up), units)}.`
}
