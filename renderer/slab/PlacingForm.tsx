import { setCarts, setChuteReach } from '../../core/document/commands/addAccess'
import { chuteSpanM, methodReachM } from '../../core/pours/day/placingMethod'
import { printMeasures } from '../../core/units/printMeasures'
import type { Access, Site } from '../../shared/document/site'
import { ChoiceField } from './ChoiceField'
import { MeasureField } from './MeasureField'
import { useRun } from './useRun'

type Carts = NonNullable<Access['carts']>

const cartNames: readonly (readonly [Carts, string])[] = [
  ['powerBuggy', 'Power buggies'],
  ['handCart', 'Wheelbarrows'],
]

const Told = ({ children }: { readonly children: string }) => (
  <div className="fields">
    <p className="told">{children}</p>
  </div>
)

/** How the concrete gets from the trucks to the forms. */
export function PlacingForm({ site }: { readonly site: Site }) {
  const run = useRun()
  const { access, units } = site
  const print = printMeasures(units)
  if (!access || access.truckSpots.length === 0)
    return <Told>Mark where a truck can stand: then it is told how far chute and carts reach.</Told>
  if (access.pumpSpots.length > 0)
    return <Told>A pump is marked: it places everything. Delete its mark to place by chute and carts.</Told>
  const carts = access.carts ?? 'powerBuggy'
  const cartName = cartNames.find(([kind]) => kind === carts)![1].toLowerCase()
  return (
    <div className="fields">
      <MeasureField
        label="Chute reach"
        lengthM={access.chuteReachM}
        units={units}
        onSet={reachM => run('chute reach', setChuteReach(reachM))}
      />
      <ChoiceField
        label="Beyond the chute"
        value={carts}
        choices={cartNames}
        onSet={kind => run('carts', setCarts(kind))}
      />
      <p className="told">
        Raked and pulled on from its end, no cart is needed to {print.length(chuteSpanM(access))} from the truck;{' '}
        {cartName} are good to {print.length(methodReachM(carts, access))}.
      </p>
    </div>
  )
}
