/** The plan as a table for the terminal: areas, borders, pours, hourly sun share of each pour, problems. */

import { DateTime } from 'luxon'
import type { Plan, SunShares } from '../../core/plan/plan'
import { entityNames } from '../../core/reports/nameEntities'
import { sheetClock } from '../../core/reports/sheetClock'
import { capitalize } from '../../core/units/capitalize'
import { printMeasures } from '../../core/units/printMeasures'
import { printProblems } from './printProblems'
import { type Align, textTable } from './textTable'

const rights = (count: number): Align[] => Array.from({ length: count }, () => 'right')

function slabTable(plan: Plan): string {
  const print = printMeasures(plan.site.units)
  const head = ['Slab', 'gross', 'openings', 'net', 'field', 'outline']
  const rows = plan.slabs.map(slab => [
    slab.name,
    print.area(slab.grossAreaM2),
    print.area(slab.openingAreaM2),
    print.area(slab.netAreaM2),
    print.area(slab.fieldAreaM2),
    print.length(slab.perimeterM),
  ])
  return textTable([head, ...rows], ['left', ...rights(5)])
}

function partTable(plan: Plan): string {
  const names = entityNames(plan.site)
  const nameOf = (id: string) => capitalize(names.get(id) ?? id)
  const print = printMeasures(plan.site.units)
  const rows = plan.slabs.flatMap(slab => [
    ...slab.borders.map(b => [
      nameOf(b.id),
      print.area(b.areaM2),
      print.length(b.outerLengthM),
      print.length(b.innerLengthM),
    ]),
    ...slab.bands.map(b => [nameOf(b.id), print.area(b.areaM2), print.length(b.lengthM), '']),
    ...slab.insets.map(i => [nameOf(i.id), print.area(i.areaM2), '', '']),
  ])
  if (rows.length === 0) return ''
  return `\n${textTable([['Border or band', 'area', 'length', 'inner length'], ...rows], ['left', ...rights(3)])}`
}

function pourTable(plan: Plan): string {
  const print = printMeasures(plan.site.units)
  const ordered = [...plan.pours].sort((a, b) => a.order - b.order)
  const order = (id: string) => plan.quantities.find(q => q.id === `${id}-concrete-order`)?.value
  const rows = ordered.map(pour => {
    const concrete = order(pour.id)
    return [
      `Pour ${pour.number}${pour.proposed ? ' (proposed)' : ''}`,
      print.area(pour.areaM2),
      concrete === undefined ? '' : print.volume(concrete),
      `${pour.order}`,
      pour.date ?? `day ${pour.day}`,
      `${pour.aspect.toFixed(1)} : 1`,
    ]
  })
  const joints = plan.joints.filter(j => j.kind === 'construction')
  const jointLine = joints.length
    ? `  Construction joints: ${joints.map(j => print.length(j.lengthM)).join(', ')}\n`
    : ''
  return `\n${textTable([['Pour', 'area', 'concrete', 'order', 'when', 'length to width'], ...rows], ['left', ...rights(5)])}${jointLine}`
}

const percent = (share: number | null | undefined) =>
  share === null || share === undefined ? '·' : `${Math.round(share * 100)}`

function sunTable(plan: Plan): string {
  const { shade, site } = plan
  const hours = shade.instants.flatMap((ms, step) => {
    const at = DateTime.fromMillis(ms, { zone: site.place.zone })
    return at.minute === 0 && shade.sun[step]!.altitudeDeg >= shade.minSunAltitudeDeg
      ? [{ step, label: at.toFormat(site.units === 'ftin' ? 'ha' : 'H').toLowerCase() }]
      : []
  })
  if (hours.length === 0) return '\n  No direct sun on this day.\n'
  const row = (name: string, shares: SunShares | undefined) => [name, ...hours.map(h => percent(shares?.[h.step]))]
  const rows = [
    ['Sun share, % at', ...hours.map(h => h.label)],
    ['Sun height, °', ...hours.map(h => `${Math.round(shade.sun[h.step]!.altitudeDeg)}`)],
    ...plan.slabs.map(slab => row(slab.name, shade.slabShares.get(slab.id))),
    ...plan.pours.map(pour => row(`Pour ${pour.number}`, shade.pourShares.get(pour.id))),
  ]
  return `\n${textTable(rows, ['left', ...rights(hours.length)])}`
}

function pointLines(plan: Plan): string {
  const clock = (ms: number | null) => (ms === null ? 'none' : sheetClock(ms, plan.site.place.zone, plan.site.units))
  return plan.points
    .map(
      p =>
        `  ${p.name}: ${hoursAndMinutes(p.directSunMin)} of direct sun, first ${clock(p.firstSunMs)}, last ${clock(p.lastSunMs)}\n`,
    )
    .join('')
}

const hoursAndMinutes = (spanMin: number): string => {
  const whole = Math.round(spanMin)
  return `${Math.floor(whole / 60)} h ${whole % 60} min`
}

export function printPlanTable(plan: Plan): string {
  const { name, place } = plan.site
  const points = pointLines(plan)
  const problems =
    plan.problems.length === 0 ? '\n  No problems.\n' : `\n${printProblems(plan.problems, plan.site.units)}`
  return `${name}, ${plan.date}, ${place.zone}\n\n${slabTable(plan)}${partTable(plan)}${pourTable(plan)}${sunTable(plan)}${points === '' ? '' : `\n${points}`}${problems}`
}
