/** Pours and the tasks after them as a calendar: RFC 5545, times in UTC, no time zone needed. */
import type { Plan } from '../../plan/plan'
import { instantOf } from '../../sun/siteDay'
import { printMeasures } from '../../units/printMeasures'

const taskWords: Record<string, string> = {
  pullForms: 'Pull forms',
  sawJoints: 'Saw joints',
  washRelease: 'Wash off release',
  openToFeet: 'Open to feet',
  openToCars: 'Open to cars',
  seal: 'Seal, as the label allows',
}

/** §3.3.11: backslash, semicolon, comma and line ends are escaped in text. */
const escapeText = (text: string): string =>
  text.replace(/\\/g, '\\\\').replace(/;/g, '\\;').replace(/,/g, '\\,').replace(/\r?\n/g, '\\n')

const octetsOf = (letter: string): number => {
  const code = letter.codePointAt(0)!
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4
}

/** §3.1: lines of more than 75 octets are folded; a letter is never split. */
export function foldLine(line: string): string {
  let out = ''
  let octets = 0
  for (const letter of line) {
    const own = octetsOf(letter)
    if (octets + own > 75) {
      out += '\r\n '
      octets = 1
    }
    out += letter
    octets += own
  }
  return out
}

const utc = (ms: number): string => `${new Date(ms).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`

interface Entry {
  readonly uid: string
  readonly fromMs: number
  readonly toMs: number
  readonly summary: string
  readonly description: string
}

const eventLines = ({ uid, fromMs, toMs, summary, description }: Entry, stampMs: number): string[] => [
  'BEGIN:VEVENT',
  `UID:${uid}`,
  `DTSTAMP:${utc(stampMs)}`,
  `DTSTART:${utc(fromMs)}`,
  `DTEND:${utc(Math.max(toMs, fromMs + 60_000))}`,
  `SUMMARY:${escapeText(summary)}`,
  `DESCRIPTION:${escapeText(description)}`,
  'END:VEVENT',
]

const halfHourMs = 30 * 60_000

/**
 * One event a pour, from the first truck to the last touch-up, and one a task after it. Pours without a day plan have no
 * time to enter and are left out. `stampMs` = when the calendar is written.
 */
export function calendarText(plan: Plan, stampMs: number): string {
  const { site } = plan
  const print = printMeasures(site.units)
  const { zone } = site.place
  const number = (id: string): string => plan.pours.find(pour => pour.id === id)?.number ?? id
  const pours = plan.dayPlans.map((day): Entry => {
    const areaM2 = day.plan.strips.reduce((sum, strip) => sum + strip.areaM2, 0)
    const volumeM3 = day.plan.loads.reduce((sum, load) => sum + load.volumeM3, 0)
    const count = day.plan.loads.length
    const loads = `${count} ${count === 1 ? 'load' : 'loads'}`
    return {
      uid: `${site.id}-${day.pourId}`,
      fromMs: day.plan.startMs,
      toMs: Math.max(...day.plan.tasks.map(task => task.toMs)),
      summary: `${site.name}: pour ${day.number}`,
      description: `${print.area(areaM2)}, ${print.volume(volumeM3)} in ${loads}, crew of ${day.input.hands}. Times are estimates: the finger test and the foreman decide.`,
    }
  })
  const after = plan.days.flatMap(day =>
    day.afterTasks.flatMap((task): Entry[] => {
      const at = instantOf(task.date, task.time, undefined, zone)
      if (!at.ok) return []
      return [
        {
          uid: `${site.id}-${task.task}-${task.pourIds.join('-')}`,
          fromMs: at.value.ms,
          toMs: at.value.ms + Math.max(halfHourMs, (task.work?.hours ?? 0) * 3_600_000),
          summary: `${site.name}: ${taskWords[task.task] ?? task.task}, pour ${task.pourIds.map(number).join(', ')}`,
          description: `${task.work ? `${print.length(task.work.lengthM)} of joints. ` : ''}Not before this time. The label and the local code decide.`,
        },
      ]
    }),
  )
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Slabwright//Pours//EN',
    'CALSCALE:GREGORIAN',
    ...[...pours, ...after].flatMap(entry => eventLines(entry, stampMs)),
    'END:VCALENDAR',
  ]
  return `${lines.map(foldLine).join('\r\n')}\r\n`
}
