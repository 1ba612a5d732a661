import { useEffect, useState } from 'react'
import type { Plan } from '../../core/plan/plan'
import { usePlan } from '../app/session'
import { type SheetList, sheetList } from './sheetList'
import { wholePlan } from './wholePlan'

const lists = new WeakMap<Plan['shade'], { readonly plan: Plan; readonly list: SheetList }>()

const isSame = (a: Plan, b: Plan): boolean => (Object.keys(b) as (keyof Plan)[]).every(key => Object.is(a[key], b[key]))

export interface Sheets {
  readonly plan: Plan
  readonly list: SheetList
}

/** The sheets of the document on screen; null while the plan or the drawing of its sheets is on its way. */
export function useSheets(): Sheets | null {
  const plan = usePlan(wholePlanOnce)
  const [sheets, setSheets] = useState<Sheets | null>(() => (plan ? (lists.get(plan.shade) ?? null) : null))
  useEffect(() => {
    if (!plan) return
    // Drawing takes a moment: the page shows "working" first.
    const timer = setTimeout(() => {
      const known = lists.get(plan.shade)
      const next = known && isSame(known.plan, plan) ? known : { plan, list: sheetList(plan) }
      lists.set(plan.shade, next)
      setSheets(next)
    }, 0)
    return () => clearTimeout(timer)
  }, [plan])
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
