import { memo } from 'react'
import { capitalize } from '../../core/units/capitalize'
import { Icon } from '../app/Icon'
import { useSession, useView } from '../app/session'
import { themes } from '../store/viewStore'
import type { PlanCamera } from './canvas/usePlanCamera'

/** The look of the plan: its theme, all of it, nearer, farther. */
export function CameraActs({ showAll, zoomMiddle }: Pick<PlanCamera, 'showAll' | 'zoomMiddle'>) {
  return (
    <fieldset className="camera-acts" aria-label="Look of the plan">
      <ThemeSwitch />
      <button type="button" className="btn" onClick={showAll}>
        <Icon name="fit" />
        Fit
      </button>
      <button type="button" className="btn only" aria-label="Nearer" title="Nearer" onClick={() => zoomMiddle(1.25)}>
        <Icon name="nearer" />
      </button>
      <button type="button" className="btn only" aria-label="Farther" title="Farther" onClick={() => zoomMiddle(0.8)}>
        <Icon name="farther" />
      </button>
    </fieldset>
  )
}

/** Goes through the themes: the table, the truck before dawn, the slab at noon. */
const ThemeSwitch = memo(function ThemeSwitch() {
  const { view } = useSession()
  const theme = useView(state => state.theme)
  const next = themes[(themes.indexOf(theme) + 1) % themes.length]!
  return (
    <button
      type="button"
      className="btn"
      title={`Change to the ${next} theme`}
      onClick={() => view.setState({ theme: next })}
    >
      <Icon name="sun" />
      {`${capitalize(theme)} theme`}
    </button>
  )
})
