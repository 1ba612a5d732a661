/** What is pasted or read from a file: an hourly weather file by its first line, else a table. */
import type { Finding, Result } from '../../shared/problem'
import { readEpw } from './readEpw'
import { type ReadHours, readWeatherTable, type TablePlace } from './readWeatherTable'

export const readWeatherText = (text: string, place: TablePlace): Result<ReadHours, readonly Finding[]> =>
  /^\uFEFF?\s*LOCATION\s*,/i.test(text)
    ? readEpw(text.replace(/^\uFEFF?\s*/, ''), place.date)
    : readWeatherTable(text.replace(/^\uFEFF/, ''), place)
