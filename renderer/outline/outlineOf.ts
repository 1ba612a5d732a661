/** The plan as words: every part that can be selected, in the order of the document. */
import { finishPartNames } from '../../core/document/finishPartNames'
import { namesOfKind } from '../../core/document/kindNames'
import { openingNames } from '../../core/document/openingNames'
import type { Plan } from '../../core/plan/plan'
import { type DirectionWish, foldDeg } from '../../core/pours/wishes/wishedDirection'
import { tapeWords } from '../../core/reports/tapeWords'
import type { Measures } from '../../core/units/measures'
import { printNumber } from '../../core/units/printNumber'
import { furnitureKinds, obstacleKinds } from '../editor/actions/actions'
import { obstacleNames } from '../editor/obstacleNames'
import type { LivePlan } from '../store/livePlan'

export interface OutlineItem {
  readonly id: string
  readonly name: string
  readonly detail: string
}

export interface OutlineSection {
  readonly id: string
  readonly name: string
  readonly items: readonly OutlineItem[]
}

export const wishWords = {
  required: 'A joint here',
  forbiddenLine: 'No joint across a line',
  forbiddenArea: 'No joint in an area',
  direction: 'Joints along a direction',
} as const

/** `Joint between pours 1, 2 and 3`: a joint may run along more than two. */
export function jointName(numbers: readonly string[]): string {
  const sorted = numbers.toSorted((a, b) => a.localeCompare(b, 'en', { numeric: true }))
  return `Joint between pours ${[sorted.slice(0, -1).join(', '), sorted.at(-1)].join(' and ')}`
}

/** `15° left of the pattern`, `along the pattern`. */
export function directionWords({ deg, relativeTo }: Pick<DirectionWish, 'deg' | 'relativeTo'>): string {
  const what = relativeTo === 'pattern' ? 'the pattern' : 'the plan’s right'
  const folded = foldDeg(deg)
  if (folded === 0) return relativeTo === 'pattern' ? 'along the pattern' : 'level on the plan'
  if (folded === 90) return relativeTo === 'pattern' ? 'across the pattern' : 'upright on the plan'
  return `${printNumber(Math.abs(folded), 1)}° ${folded > 0 ? 'left' : 'right'} of ${what}`
}

function accessItems(access: LivePlan['site']['access'], print: Measures): OutlineItem[] {
  if (!access) return []
  const numbered = (rows: readonly { readonly id: string }[], name: string) =>
    rows.map(({ id }, i) => ({ id, name: `${name} ${i + 1}`, detail: 'access' }))
  return [
    ...numbered(access.truckSpots, 'Truck'),
    ...numbered(access.pumpSpots, 'Pump'),
    ...numbered(access.washouts, 'Washout'),
    ...numbered(access.noGo, 'Area to keep off'),
    ...access.ways.map(({ id, name, widthM }) => ({
      id,
      name: name ?? 'Way in and out',
      detail: `${print.length(widthM)} wide`,
    })),
  ]
}

/** Of the work, not of what will stand there. */
const workSections: ReadonlySet<string> = new Set(['access', 'wishes', 'notes', 'tapes', 'points'])

/** What a client is shown of the plan, in words; areas only where they were asked for. */
export const clientSections = (live: LivePlan, showsAreas: boolean, print: Measures): OutlineSection[] =>
  outlineSections(live, { showsAreas }, print).filter(({ id }) => !workSections.has(id))

/** `pours` and `joints` only where they are on screen. Sections without items are left out. */
export function outlineSections(
  live: LivePlan,
  { pours = [], joints = [], showsAreas = true }: Partial<Pick<Plan, 'pours' | 'joints'>> & { showsAreas?: boolean },
  print: Measures,
): OutlineSection[] {
  const { site } = live
  const areaWords = (areaM2: number): readonly string[] => (showsAreas ? [print.area(areaM2)] : [])
  const slabs = live.slabs.map((slab, i): OutlineSection => {
    const source = site.slabs[i]
    const openings = openingNames(source?.openings ?? slab.openings)
    const finished = finishPartNames(source ?? slab)
    const obstacles = obstacleNames(source?.obstacles ?? [])
    const steps = namesOfKind(source?.steps ?? [], 'steps')
    return {
      id: `in ${slab.id}`,
      name: slab.name,
      items: [
        {
          id: slab.id,
          name: `${slab.name}, outline`,
          detail: [
            ...areaWords(slab.netAreaM2).map(area => `${area} net`),
            `${print.length(slab.perimeterM)} around`,
          ].join(', '),
        },
        ...slab.openings.map(opening => ({
          id: opening.id,
          name: openings.get(opening.id)!.title,
          detail: ['opening', ...areaWords(opening.areaM2)].join(', '),
        })),
        ...slab.borders.map(border => ({
          id: border.id,
          name: finished.get(border.id)!.title,
          detail: [
            `${print.size(border.widthM)} wide`,
            `${print.length(border.outerLengthM)} outside`,
            ...areaWords(border.areaM2),
          ].join(', '),
        })),
        ...slab.bands.map(band => ({
          id: band.id,
          name: finished.get(band.id)!.title,
          detail: `${print.size(band.widthM)} wide, ${print.length(band.lengthM)}`,
        })),
        ...slab.insets.map(inset => ({
          id: inset.id,
          name: finished.get(inset.id)!.title,
          detail: areaWords(inset.areaM2).join(''),
        })),
        ...(source?.steps ?? []).map(({ id, risers, widthM }) => ({
          id,
          name: steps.get(id)!.title,
          detail: `${risers} risers, ${print.length(widthM)} wide`,
        })),
        ...(source?.obstacles ?? []).map(({ id, name, kind }) => ({
          id,
          name: obstacles.get(id)!.title,
          detail: name === undefined ? 'obstacle' : obstacleKinds[kind],
        })),
      ],
    }
  })
  const casters = site.casters.map(caster => {
    const height =
      caster.kind === 'building'
        ? caster.eaveM - caster.baseM
        : caster.kind === 'cover'
          ? caster.undersideM
          : caster.topM - caster.baseM
    const kind = { building: 'building, eave', wall: 'wall or fence,', tree: 'tree,', cover: 'cover, underside' }[
      caster.kind
    ]
    return { id: caster.id, name: caster.name, detail: `${kind} ${print.length(height)}` }
  })
  const sections: OutlineSection[] = [
    ...slabs,
    { id: 'casters', name: 'What throws shade', items: casters },
    { id: 'access', name: 'Access', items: accessItems(site.access, print) },
    {
      id: 'wishes',
      name: 'Joint lines',
      items: site.wishes.map(wish => ({
        id: wish.id,
        name: wishWords[wish.kind],
        detail: wish.kind === 'direction' ? directionWords(wish) : 'joint line',
      })),
    },
    {
      id: 'furniture',
      name: 'Furniture',
      items: (site.furnishings ?? []).map(({ id, name, kind, widthM, depthM }) => ({
        id,
        name: name ?? furnitureKinds[kind],
        detail: `${print.length(widthM)} × ${print.length(depthM)}`,
      })),
    },
    {
      id: 'notes',
      name: 'Notes',
      items: (site.notes ?? []).map(({ id, text }) => ({ id, name: text, detail: 'note' })),
    },
    {
      id: 'tapes',
      name: 'Tape dimensions',
      items: (site.tapes ?? []).map((tape, i) => ({
        id: tape.id,
        name: `Tape ${i + 1}`,
        detail: tapeWords(tape, print).join(', '),
      })),
    },
    { id: 'points', name: 'Marked points', items: site.points.map(({ id, name }) => ({ id, name, detail: 'point' })) },
    {
      id: 'pours',
      name: 'Pours',
      items: pours.map(pour => ({
        id: pour.id,
        name: `Pour ${pour.number}`,
        detail: `${print.area(pour.areaM2)}${pour.proposed ? ', proposed' : ''}`,
      })),
    },
    {
      id: 'joints',
      name: 'Construction joints',
      items: joints
        .filter(({ kind }) => kind === 'construction')
        .map(({ id, pourIds, lengthM, locked }) => ({
          id,
          name: jointName(pourIds.flatMap(pourId => pours.find(pour => pour.id === pourId)?.number ?? [])),
          detail: `${print.length(lengthM)}${locked ? ', locked' : ''}`,
        })),
    },
  ]
  return sections.filter(section => section.items.length > 0)
}
