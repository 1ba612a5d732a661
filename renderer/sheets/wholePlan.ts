import type { Plan } from '../../core/plan/plan'
import type { DerivedState } from '../store/planStore'

/** The plan of the document on screen, once every part of this revision is there; null while one is on its way. */
export function wholePlan({ live, parts, revs, rev, date, isRenewing }: DerivedState): Plan | null {
  const { day, pours, joints, days, order, shade, points, quantities, dayPlans, capacities, problems } = parts
  if (!live || isRenewing || !day || !pours || !joints || !days || !order || !shade || !points) return null
  if (!quantities || !dayPlans || !capacities || !problems || revs.problems !== rev) return null
  const { site, slabs, casters } = live
  const known = { site, date, day, slabs, casters, pours, joints, days, order, shade, points, quantities }
  return { ...known, dayPlans, capacities, problems }
}
