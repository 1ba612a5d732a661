/** Ways to split each part of the site, priced: for the JSON object and what shows them side by side. */
import { settingValue } from '../../shared/settings'
import type { Alternative } from '../pours/alternatives/alternative'
import { proposeAlternatives } from '../pours/alternatives/proposeAlternatives'
import { type AlternativeSentence, heldAgainst, wordAlternative } from '../pours/alternatives/wordAlternative'
import type { Proposal } from '../pours/proposePours'
import { printMeasures } from '../units/printMeasures'
import type { Memo } from './memo'
import type { Plan } from './plan'
import { pourParts } from './pourParts'

export interface PlannedAlternative extends Alternative {
  readonly id: string
  readonly slabId: string
  readonly part: 'whole' | 'field' | 'border'
  readonly sentences: readonly AlternativeSentence[]
}

/** Computed on demand, not with the plan. Pass the memo that the plan was derived with: its splits are used again. */
export function planAlternatives(plan: Plan, memo: Memo): readonly PlannedAlternative[] {
  const { site, slabs, date } = plan
  const { settings, units, access, crew, calendar, casters } = site
  const capM2 = site.capacity?.capM2 ?? settingValue(settings, 'capM2')
  const print = printMeasures(units)
  return slabs.flatMap(slab => {
    const source = site.slabs.find(({ id }) => id === slab.id)
    if (!source) return []
    return memo
      .part('pourParts', slab.id, [slab], () => pourParts(slab))
      .flatMap(({ part, regions }) =>
        regions.flatMap((region, i) => {
          const key = `${slab.id} ${part} ${i}`
          const fewest = memo.known<Proposal>('proposal', key, [region, capM2])
          const inputs = [
            region,
            capM2,
            settings,
            units,
            access,
            crew,
            calendar,
            casters,
            slabs,
            source.thicknessM,
            date,
          ]
          const all = memo.part('alternatives', key, inputs, () =>
            proposeAlternatives(
              { slabId: slab.id, part, region, capM2 },
              {
                slabId: slab.id,
                part,
                thicknessM: source.thicknessM,
                pumped: (access?.pumpSpots.length ?? 0) > 0,
                units,
                settings,
                site: {
                  slabs,
                  casters,
                  noGo: access?.noGo ?? [],
                  ways: access?.ways ?? [],
                  truckSpots: (access?.truckSpots ?? []).map(({ at }) => at),
                  ...(crew === undefined ? {} : { crew }),
                  ...(calendar === undefined ? {} : { calendar }),
                  ...(settings === undefined ? {} : { settings }),
                  capM2,
                  startDate: date,
                },
              },
              fewest,
            ),
          )
          return all.map((each, at): PlannedAlternative => {
            const other = heldAgainst(all, at)
            return {
              ...each,
              id: `${key} ${each.kind}`,
              slabId: slab.id,
              part,
              sentences: other ? wordAlternative(each.figures, other.figures, print) : [],
            }
          })
        }),
      )
  })
}
