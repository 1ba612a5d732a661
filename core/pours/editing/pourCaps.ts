/** The largest area of one pour that edits of accepted pours are held against. */
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { settingValue } from '../../../shared/settings'
import type { CapacityRule } from '../day/capacityOf'

export interface PourCap {
  readonly capM2: number
  /** What makes it that. */
  readonly rule: CapacityRule
  /** Of the crew, where crew and weather rule. */
  readonly hands?: number
  /** Where crew and weather rule: of which day, and what is common practice on any other. */
  readonly ofDay?: { readonly date: string; readonly practiceM2: number }
}

/** By slab: what the splitter is held to there. */
export type PourCaps = (slabId: Id) => PourCap

/** What the site alone tells: the area typed, else common practice. Crew and weather take a plan to know. */
export function typedCaps({ capacity, settings }: Pick<Site, 'capacity' | 'settings'>): PourCaps {
  const cap: PourCap = capacity
    ? { capM2: capacity.capM2, rule: 'userCap' }
    : { capM2: settingValue(settings, 'capM2'), rule: 'commonPractice' }
  return () => cap
}
