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

/** How the concrete gets from the trucks to the forms. */
export function PlacingForm({ site }: { readonly site: Site }) {
  const run = useRun()
  const { access, units } = site
  const print = printMeasures(units)
  if (!access || access.truckSpots.length === 0)
    return <p className="note">Mark where a truck can stand: then it is told how far chute and carts reach.</p>
  if (access.pumpSpots.length > 0)
    return <p className="note">A pump is marked: it places everything. Delete its mark to place by chute and carts.</p>
  return (
    <>
      <MeasureField
        label="Chute reach"
        lengthM={access.chuteReachM}
        units={units}
        onSet={reachM => run('chute reach', setChuteReach(reachM))}
      />
      <p className="note">
        Raked and pulled on from its end, no cart is needed to {print.length(chuteSpanM(access))} from the truck.
      </p>
      <ChoiceField
        label="Beyond the chute"
        value={access.carts ?? 'powerBuggy'}
        choices={cartNames.map(([kind, name]) => [kind, `${name}, to ${print.length(methodReachM(kind, access))}`])}
        onSet={kind => run('carts', setCarts(kind))}
      />
    </>
  )
}
