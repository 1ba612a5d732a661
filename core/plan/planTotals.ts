/** What the figures of all slabs and pours come to: sums, materials to buy, the bid. */
import type { Site } from '../../shared/document/site'
import type { Quantity } from '../../shared/planJson'
import type { Finding } from '../../shared/problem'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { siteRetarder } from '../pours/day/retarder'
import { checkMaterialPrices, materialTotals } from '../quantities/materialTotals'
import { bidOverMaterials, checkPrices, priceFigures, priceLines } from '../quantities/priceFigures'
import { siteTotals } from '../quantities/siteTotals'
import type { PlannedPour } from './plan'
import { pouredIds } from './pouredIds'

export interface PlannedTotals {
  readonly quantities: readonly Quantity[]
  readonly findings: readonly Finding[]
}

/** `figures` = of all slabs and pours, packages of retarder among them where the days are planned. */
export function planTotals(
  site: Site,
  slabs: readonly ResolvedSlab[],
  pours: readonly PlannedPour[],
  figures: readonly Quantity[],
): PlannedTotals {
  const { materials = [], stock = [], prices = [] } = site
  const poured = pouredIds(site)
  const ofPours = pours.map(({ id, number }) => ({ id, number, isPoured: poured.has(id) }))
  const priced = { slabs, sources: site.slabs, figures, pourCount: pours.length }
  const lines = priceLines(prices, priced)
  const retarderId = siteRetarder(site)?.id
  const ofMaterials = materialTotals({ materials, stock, pours: ofPours, figures, retarderId })
  const bid = priceFigures(lines, site.bid)
  return {
    quantities: [
      ...siteTotals({ slabs: site.slabs, pours, figures }),
      ...ofMaterials,
      ...bid,
      ...bidOverMaterials([...bid, ...ofMaterials]),
    ],
    findings: [...checkPrices(lines, priced, site.bid), ...checkMaterialPrices(materials, ofMaterials)],
  }
}
