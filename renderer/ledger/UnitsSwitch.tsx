import { usePlan, useSession } from '../app/session'

export function UnitsSwitch() {
  const { site } = useSession()
  const units = usePlan(({ live }) => live?.site.units)
  return (
    <button
      type="button"
      className="as-words"
      title="Change the units of the site"
      onClick={() =>
        site.edit('units', draft => {
          draft.units = units === 'ftin' ? 'metric' : 'ftin'
        })
      }
    >
      {units === 'ftin' ? 'feet and inches' : 'metric'}
    </button>
  )
}
