/** What is pasted or read from a file: an hourly weather file by a line of its form, else a table. */
import type { Finding, Result } from '../../shared/problem'
import { readEpw } from './readEpw'
import { type ReadHours, readWeatherTable, type TablePlace } from './readWeatherTable'

/** Lines that only such a file has: a named line of its head, or an hour of 35 columns that begins with its date. */
const epwLine =
  /^\uFEFF?\s*(?:(?:LOCATION|DESIGN CONDITIONS|TYPICAL\/EXTREME PERIODS|GROUND TEMPERATURES|HOLIDAYS\/DAYLIGHT SAVINGS?|COMMENTS [12]|DATA PERIODS)\s*,|\d{4}(?:,\s*\d{1,2}){4},(?:[^,\n]*,){20})/im

export const readWeatherText = (text: string, place: TablePlace): Result<ReadHours, readonly Finding[]> =>
  epwLine.test(text)
    ? readEpw(text.replace(/^\uFEFF?\s*/, ''), place.date)
    : readWeatherTable(text.replace(/^\uFEFF/, ''), place)
