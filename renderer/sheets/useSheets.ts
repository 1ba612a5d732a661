import { useEffect, useState } from 'react'
import type { Plan } from '../../core/plan/plan'
import type { PlannedAlternative } from '../../core/plan/planAlternatives'
import { usePlan } from '../app/session'
import { type SheetList, sheetList } from './sheetList'
import { wholePlan } from './wholePlan'

type Offers = readonly PlannedAlternative[] | undefined

interface Listed extends Sheets {
  readonly offers: Offers
}

const lists = new WeakMap<Plan['shade'], Listed>()

const isSame = (a: Plan, b: Plan): boolean => (Object.keys(b) as (keyof Plan)[]).every(key => Object.is(a[key], b[key]))

export interface Sheets {
  readonly plan: Plan
  readonly list: SheetList
}

/** The sheets of the document on screen; null while the plan or the drawing of its sheets is on its way. */
export function useSheets(): Sheets | null {
  const plan = usePlan(wholePlanOnce)
  // Ways to split stand among the sheets once they were looked at.
  const offers = usePlan(({ parts, revs, rev }): Offers => (revs.offers === rev ? parts.offers : undefined))
  const [sheets, setSheets] = useState<Sheets | null>(() => (plan ? (lists.get(plan.shade) ?? null) : null))
  useEffect(() => {
    if (!plan) return
    // Drawing takes a moment: the page shows "working" first.
    const timer = setTimeout(() => {
      const known = lists.get(plan.shade)
      const isKnown = known && known.offers === offers && isSame(known.plan, plan)
      const next = isKnown ? known : { plan, offers, list: sheetList(plan, offers) }
      lists.set(plan.shade, next)
      setSheets(next)
    }, 0)
    return () => clearTimeout(timer)
  }, [plan, offers])
  return plan === sheets?.plan ? sheets : null
}

let last: Plan | null = null

/** The same object while the plan is the same. */
const wholePlanOnce: typeof wholePlan = state => {
  const plan = wholePlan(state)
  if (plan === null) return null
  if (last === null || !isSame(last, plan)) last = plan
  return last
}
