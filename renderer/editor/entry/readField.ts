import { parseLength } from '../../../core/units/parseLength'
import type { Site } from '../../../shared/document/site'
import type { Result } from '../../../shared/problem'
import type { Field } from '../actions/drawing'
import { parseDirection, parseTurn } from './directions'

/** What was typed into a box: meters or degrees, or in words why it is neither. */
export function readField(
  { reads }: Field,
  text: string,
  { units, place }: Pick<Site, 'units' | 'place'>,
): Result<number, { readonly message: string }> {
  if (reads === 'length') return parseLength(text, units)
  return reads === 'turn' ? parseTurn(text) : parseDirection(text, place.northDeg)
}
