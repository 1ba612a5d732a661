import { changeSlab } from '../../../core/document/commands/changeEntity'
import type { Site } from '../../../shared/document/site'
import type { Slab } from '../../../shared/document/slab'
import { MeasureField } from '../MeasureField'
import { useRun } from '../useRun'
import { AddBorder } from './AddBorder'
import { CornerRadii } from './CornerRadius'
import { FinishField } from './FinishField'
import { GoToPart } from './GoTo'
import { GroundFields } from './GroundFields'
import { NeededNameField } from './NameField'
import { SquareFields } from './SquareFields'

/** All that can be set about a slab as a whole. */
export function SlabPanel({ site, slab }: { readonly site: Site; readonly slab: Slab }) {
  const run = useRun()
  return (
    <>
      <header>
        <h2>{slab.name}</h2>
      </header>
      <div className="fields">
        <NeededNameField name={slab.name} set={name => changeSlab(slab.id, { name })} />
        <FinishField site={site} finishId={slab.finishId} set={finishId => changeSlab(slab.id, { finishId })} />
        <MeasureField
          label="Thickness"
          size="thickness"
          lengthM={slab.thicknessM}
          units={site.units}
          onSet={to => run('thickness', changeSlab(slab.id, { thicknessM: to }))}
        />
        <MeasureField
          label="Base"
          size="base"
          lengthM={slab.baseDepthM}
          units={site.units}
          onSet={to => run('base depth', changeSlab(slab.id, { baseDepthM: to }))}
        />
        <MeasureField
          label="Top above the site mark"
          lengthM={slab.levelM}
          units={site.units}
          minM={-100}
          onSet={to => run('level', changeSlab(slab.id, { levelM: to }))}
        />
        <AddBorder site={site} slab={slab} pathId={slab.outline.id} edges="all" />
      </div>
      <GroundFields site={site} slab={slab} />
      <h3>Corners and edges</h3>
      <div className="fields">
        <CornerRadii path={slab.outline} units={site.units} />
        <GoToPart site={site} path={slab.outline} value={slab.id} />
        <SquareFields site={site} path={slab.outline} />
      </div>
    </>
  )
}
