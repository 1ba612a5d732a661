/** What pours are held against when joints are edited: that which rules the splitter. */
import type { Site } from '../../shared/document/site'
import { type PourCaps, typedCaps } from '../pours/editing/pourCaps'
import type { SlabCapacity } from './planCapacity'

export const capsOf =
  (site: Pick<Site, 'capacity' | 'settings'>, capacities: readonly SlabCapacity[]): PourCaps =>
  slabId => {
    const own = capacities.find(each => each.slabId === slabId)
    if (!own) return typedCaps(site)(slabId)
    const { capM2, rule, crew, practiceM2 } = own
    return { capM2, rule, ...(crew ? { hands: crew.hands, ofDay: { date: crew.date, practiceM2 } } : {}) }
  }
