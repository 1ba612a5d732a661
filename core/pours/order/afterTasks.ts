/** What follows a pour and when it may start: forms, joints, washing, opening, sealing. */
import type { SettingName } from '../../../shared/settings'
import { type CalendarRules, clockOf, dateOf, nextWorkMoment } from './workCalendar'

export const afterTaskNames = ['pullForms', 'sawJoints', 'washRelease', 'openToFeet', 'openToCars', 'seal'] as const
export type AfterTaskName = (typeof afterTaskNames)[number]

export interface AfterTask {
  readonly task: AfterTaskName
  readonly pourIds: readonly string[]
  readonly date: string
  /** `HH:MM` on the clock of the site: not before. */
  readonly time: string
  /** Of sawing: contraction joint to saw, and how long that takes one saw. */
  readonly work?: { readonly lengthM: number; readonly hours: number }
  /** What has to wait for it. */
  readonly blocks: 'neighbors' | 'feet' | 'cars' | 'nothing'
}

interface Rule {
  readonly wait: SettingName
  /** Work for hands, done in working hours; else it comes by itself. */
  readonly isWork: boolean
  readonly blocks: AfterTask['blocks']
}

const rules: Readonly<Record<AfterTaskName, Rule>> = {
  pullForms: { wait: 'pullFormsH', isWork: true, blocks: 'neighbors' },
  sawJoints: { wait: 'sawJointsH', isWork: true, blocks: 'nothing' },
  washRelease: { wait: 'washReleaseH', isWork: true, blocks: 'nothing' },
  openToFeet: { wait: 'openToFeetH', isWork: false, blocks: 'feet' },
  openToCars: { wait: 'openToCarsH', isWork: false, blocks: 'cars' },
  seal: { wait: 'sealH', isWork: true, blocks: 'nothing' },
}

/**
 * The tasks after the pours of one day, which end at `doneMin` minutes of it. `sawM` = contraction joint in them: without
 * any there is nothing to saw; null where it is not known.
 */
export function afterTasks(
  pourIds: readonly string[],
  day: number,
  doneMin: number,
  calendar: CalendarRules,
  setting: (name: SettingName) => number,
  sawM: number | null = null,
): AfterTask[] {
  return afterTaskNames.flatMap((task): AfterTask[] => {
    const isSaw = task === 'sawJoints'
    if (isSaw && sawM === 0) return []
    const rule = rules[task]
    const minutes = doneMin + 60 * setting(rule.wait)
    const earliest = { day: day + Math.floor(minutes / 1440), minute: Math.round(minutes % 1440) }
    const moment = rule.isWork ? nextWorkMoment(calendar, earliest) : earliest
    const work = isSaw && sawM !== null ? { work: { lengthM: sawM, hours: sawM / setting('sawMH') } } : {}
    return [{ task, pourIds, date: dateOf(moment.day), time: clockOf(moment.minute), ...work, blocks: rule.blocks }]
  })
}
