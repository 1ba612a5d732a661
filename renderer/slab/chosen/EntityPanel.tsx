import { changeMarkedPoint, changeObstacle, changeWay } from '../../../core/document/commands/changeEntity'
import type { Entity } from '../../../core/document/commands/siteEntities'
import type { Way } from '../../../shared/document/day'
import type { Site } from '../../../shared/document/site'
import type { Obstacle } from '../../../shared/document/slab'
import { obstacleKinds } from '../../editor/actions/actions'
import { ChoiceField } from '../ChoiceField'
import { obstacleChoices } from '../choices'
import { MeasureField } from '../MeasureField'
import { useRun } from '../useRun'
import { CasterPanel } from './CasterPanel'
import { GoToPart } from './GoTo'
import { NameField, NeededNameField } from './NameField'
import { OpeningPanel } from './OpeningPanel'
import { PlaceFields } from './PlaceFields'
import { ShownPanel } from './ShownPanel'
import { SlabPanel } from './SlabPanel'
import { StepsPanel } from './StepsPanel'
import { StripPanel } from './StripPanel'
import { WayHours } from './WayHours'
import { WishPanel } from './WishPanel'

const spotWords = { truckSpots: 'Truck spot', pumpSpots: 'Pump spot', washouts: 'Washout' } as const

/** All that can be set about one thing on the site. */
export function EntityPanel({ site, entity }: { readonly site: Site; readonly entity: Entity }) {
  switch (entity.kind) {
    case 'slab':
      return <SlabPanel site={site} slab={entity.row} />
    case 'caster':
      return <CasterPanel site={site} caster={entity.row} />
    case 'opening':
      return <OpeningPanel site={site} opening={entity.row} />
    case 'border':
    case 'band':
    case 'inset':
      return <StripPanel site={site} strip={entity} />
    case 'steps':
      return <StepsPanel site={site} steps={entity.row} />
    case 'obstacle':
      return <ObstaclePanel site={site} obstacle={entity.row} />
    case 'way':
      return <WayPanel site={site} way={entity.row} />
    case 'wish':
      return <WishPanel site={site} wish={entity.row} />
    case 'furnishing':
    case 'note':
    case 'tape':
      return <ShownPanel site={site} entity={entity} />
    case 'point':
      return (
        <>
          <header>
            <h2>Marked point</h2>
          </header>
          <div className="fields">
            <NeededNameField
              label="Words"
              name={entity.row.name}
              step="note"
              set={name => changeMarkedPoint(entity.row.id, { name })}
            />
            <PlaceFields site={site} id={entity.row.id} at={entity.row.at} />
          </div>
        </>
      )
    case 'spot':
      return (
        <>
          <header>
            <h2>{spotWords[entity.spots]}</h2>
          </header>
          <div className="fields">
            <PlaceFields site={site} id={entity.row.id} at={entity.row.at} />
          </div>
        </>
      )
    case 'noGo':
      return (
        <>
          <header>
            <h2>Area to keep off</h2>
          </header>
          <div className="fields">
            <GoToPart site={site} path={entity.row} value={entity.row.id} />
          </div>
        </>
      )
  }
}

function ObstaclePanel({ site, obstacle }: { readonly site: Site; readonly obstacle: Obstacle }) {
  const run = useRun()
  const { id, name, kind, at } = obstacle
  return (
    <>
      <header>
        <h2>{name ?? obstacleKinds[kind]}</h2>
      </header>
      <div className="fields">
        <NameField name={name} set={to => changeObstacle(id, { name: to })} />
        <ChoiceField
          label="Kind"
          value={kind}
          choices={obstacleChoices}
          onSet={to => run('obstacle', changeObstacle(id, { kind: to }))}
        />
        <PlaceFields site={site} id={id} at={at} />
      </div>
    </>
  )
}

function WayPanel({ site, way }: { readonly site: Site; readonly way: Way }) {
  const run = useRun()
  const { id, name, widthM, at } = way
  return (
    <>
      <header>
        <h2>Way in and out</h2>
      </header>
      <div className="fields">
        <NameField name={name} set={to => changeWay(id, { name: to })} />
        <MeasureField
          label="Width"
          lengthM={widthM}
          units={site.units}
          onSet={to => run('way width', changeWay(id, { widthM: to }))}
        />
        <PlaceFields site={site} id={id} at={at} />
      </div>
      <WayHours way={way} />
    </>
  )
}
