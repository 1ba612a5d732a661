/** Weather for one run of the command line: read from a file or asked of the public service; the site's file stays as it is. */
import { readFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import { hourlyConditions } from '../../core/weather/hourlyConditions'
import { readWeatherText } from '../../core/weather/readWeatherText'
import type { Conditions } from '../../shared/document/day'
import type { Site } from '../../shared/document/site'
import { err, type Finding, ok, type Result } from '../../shared/problem'
import { fetchForecast } from '../weather/fetchForecast'

const told = ({ units, place }: Site, findings: readonly Finding[]): string =>
  findings
    .map(finding => wordProblem(finding, printMeasures(units), place.zone))
    .map(({ message, hint }) => `${message}${hint === undefined ? '' : ` ${hint}`}\n`)
    .join('')

/** `date` = the day it is wanted for. Fails with lines for the person at the terminal. */
export async function weatherFor(
  site: Site,
  from: { readonly file?: string; readonly forecast: boolean },
  date: string,
): Promise<Result<Conditions | undefined, string>> {
  const { zone, latDeg, lonDeg } = site.place
  if (from.file !== undefined) {
    let text: string
    try {
      text = await readFile(from.file, 'utf8')
    } catch {
      return err(`${from.file} cannot be opened.\n`)
    }
    const read = readWeatherText(text, { date, zone })
    return read.ok
      ? ok(hourlyConditions(read.value.hours, date, zone, basename(from.file)))
      : err(told(site, read.error))
  }
  if (!from.forecast) return ok(site.conditions)
  const asked = await fetchForecast(latDeg, lonDeg)
  return asked.ok
    ? ok(hourlyConditions(asked.value.hours, date, zone, asked.value.source))
    : err(told(site, asked.error))
}
