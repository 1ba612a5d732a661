import type { Site } from '../shared/document/site'
import { bentWalk } from './sites/bentWalk'
import { court100Casters } from './sites/court100Casters'
import { driveway } from './sites/driveway'
import { hallTerrace } from './sites/hallTerrace'
import { kidneyPoolDeck } from './sites/kidneyPoolDeck'
import { l620 } from './sites/l620'
import { loggedCourt } from './sites/loggedCourt'
import { lPatio } from './sites/lPatio'
import { lPatioAccepted } from './sites/lPatioAccepted'
import { metricTerrace } from './sites/metricTerrace'
import { plainRectangle } from './sites/plainRectangle'
import { plaza } from './sites/plaza'
import { roundCourt } from './sites/roundCourt'
import { schoolCourt } from './sites/schoolCourt'

/** The sample sites by file name. */
export const sampleSites = (): Readonly<Record<string, Site>> => ({
  'plain-rectangle': plainRectangle(),
  'l-patio': lPatio(),
  'l-patio-accepted': lPatioAccepted(),
  'logged-court': loggedCourt(),
  'l-620': l620(),
  'kidney-pool-deck': kidneyPoolDeck(),
  'bent-walk': bentWalk(),
  driveway: driveway(),
  'round-court': roundCourt(),
  'hall-terrace': hallTerrace(),
  'school-court': schoolCourt(),
  plaza: plaza(),
  'metric-terrace': metricTerrace(),
  'court-100-casters': court100Casters(),
})
