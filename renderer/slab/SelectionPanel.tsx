import { useState } from 'react'
import {
  changeBand,
  changeBorder,
  changeCaster,
  changeDirection,
  changeInset,
  changeMarkedPoint,
  changeObstacle,
  changeOpening,
  changeSlab,
  changeWay,
} from '../../core/document/commands/changeEntity'
import type { Command } from '../../core/document/commands/editSite'
import { findEdge, findVertex } from '../../core/document/commands/findPath'
import { findLinePoint } from '../../core/document/commands/linePoints'
import { type LineUpSide, lineUp, lineUpCorners, selectionBox } from '../../core/document/commands/lineUp'
import { mirrorSelection, turnSelection } from '../../core/document/commands/moveSelection'
import { setCornerRadius } from '../../core/document/commands/setCornerRadius'
import { chosenEntities, type Entity } from '../../core/document/commands/siteEntities'
import { addBorder, restackBorder } from '../../core/document/commands/slabParts'
import { squarenessOf, squareUp } from '../../core/document/commands/squareUp'
import { isSquare, type Squareness, squareWithinM } from '../../core/geometry/field/squareness'
import type { DirectionWish } from '../../core/pours/wishes/wishedDirection'
import type { Measures } from '../../core/units/measures'
import { printMeasures } from '../../core/units/printMeasures'
import type { Caster } from '../../shared/document/caster'
import type { Id } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import type { Slab } from '../../shared/document/slab'
import { useView } from '../app/session'
import { obstacleKinds } from '../editor/actions/actions'
import { cornerLetter } from '../editor/cornerNames'
import { useEditor, useEditorState } from '../editor/useEditor'
import { wishWords } from '../outline/outlineOf'
import { ChoiceField } from './ChoiceField'
import {
  densityChoices,
  finishChoices,
  lightChoices,
  obstacleChoices,
  openingChoices,
  placedChoices,
  poolChoices,
  roofChoices,
} from './choices'
import { EdgePanel } from './EdgePanel'
import { GoToPart } from './GoTo'
import { GroundFields } from './GroundFields'
import { MeasureField } from './MeasureField'
import { NumberField } from './NumberField'
import { HeightByShadow } from './north/HeightByShadow'
import { PasteButton } from './PasteButton'
import { PlaceFields } from './PlaceFields'
import { GoToPoint, PointPanel } from './PointPanel'
import { ShownPanel } from './ShownPanel'
import { StepsFields } from './StepsFields'
import { TextField } from './TextField'
import { useRun } from './useRun'
import { WayHours } from './WayHours'

const spotWords = { truckSpots: 'Truck spot', pumpSpots: 'Pump spot', washouts: 'Washout' } as const

const noName = 'Write a name: lists and sheets call it by that.'

interface PanelOf {
  readonly site: Site
}

/** Properties of what is chosen on the plan. */
export function SelectionPanel({ site }: PanelOf) {
  const selection = useView(state => state.selection)
  const action = useEditorState(state => state.action)
  if (action !== 'select' || selection.length === 0) return null
  const entities = chosenEntities(site, selection)
  const edges = selection.filter(id => findEdge(site, id))
  const corners = selection.filter(id => findVertex(site, id))
  const points = selection.filter(id => findLinePoint(site, id))
  if (entities.length + edges.length + corners.length + points.length === 0) return null
  const [entity] = entities
  const point = entities.length + edges.length + corners.length === 0 ? findLinePoint(site, points[0]!) : undefined
  return (
    <section className="slab-form chosen-form" aria-label="What is chosen">
      {entities.length === 1 && entity ? <EntityPanel site={site} entity={entity} /> : null}
      {entities.length === 0 && edges.length > 0 ? <EdgePanel site={site} edgeIds={edges} /> : null}
      {entities.length + edges.length === 0 && corners.length > 0 ? <CornerPanel site={site} ids={corners} /> : null}
      {point && points.length === 1 ? <PointPanel site={site} point={point} /> : null}
      {point && points.length > 1 ? (
        <header>
          <h2>{points.length} points</h2>
        </header>
      ) : null}
      {entities.length > 1 ? (
        <header>
          <h2>{entities.length} chosen</h2>
        </header>
      ) : null}
      <Together site={site} ids={selection} canLineUp={entities.length > 1} isWhole={entities.length > 0} />
    </section>
  )
}

const sides: readonly (readonly [LineUpSide, string])[] = [
  ['left', 'Left sides'],
  ['right', 'Right sides'],
  ['top', 'Tops'],
  ['bottom', 'Bottoms'],
  ['middleAcross', 'Middles, one above the other'],
  ['middleUp', 'Middles, side by side'],
]

/** What can be done with anything that is chosen. */
function Together({
  site,
  ids,
  canLineUp,
  isWhole,
}: PanelOf & { readonly ids: readonly Id[]; readonly canLineUp: boolean; readonly isWhole: boolean }) {
  const editor = useEditor()
  const run = useRun()
  const [turnDeg, setTurnDeg] = useState(90)
  const [side, setSide] = useState<LineUpSide>('left')
  const box = isWhole ? selectionBox(site, ids) : undefined
  return (
    <>
      <div className="fields acts-row">
        {box ? (
          <>
            <NumberField
              label="Turn by"
              unit="° left"
              value={turnDeg}
              min={-360}
              max={360}
              step={0.5}
              onSet={setTurnDeg}
            />
            <button
              type="button"
              className="btn"
              onClick={() =>
                run('turn', turnSelection(ids, [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2], turnDeg))
              }
            >
              Turn
            </button>
            <button
              type="button"
              className="btn"
              onClick={() => {
                const x = (box.minX + box.maxX) / 2
                run('mirror', mirrorSelection(ids, [x, box.minY - 1], [x, box.maxY + 1]))
              }}
            >
              Mirror
            </button>
          </>
        ) : null}
        {isWhole ? (
          <>
            <button
              type="button"
              className="btn"
              onClick={() => {
                editor.copy()
                editor.paste()
              }}
            >
              Copy beside
            </button>
            <button
              type="button"
              className="btn"
              onClick={() => {
                const text = editor.copy()
                // Where the browser keeps its clipboard to itself, the copy still stands for this window.
                if (text !== null) navigator.clipboard?.writeText(text).catch(() => {})
              }}
            >
              Copy
            </button>
          </>
        ) : null}
        <PasteButton site={site} />
        <button type="button" className="btn" onClick={() => editor.remove()}>
          Delete
        </button>
      </div>
      {canLineUp ? (
        <div className="fields">
          <ChoiceField label="Line up with the first" value={side} choices={sides} onSet={setSide} />
          <button type="button" className="btn" onClick={() => run('line up', lineUp(ids, side))}>
            Line up
          </button>
        </div>
      ) : null}
    </>
  )
}

function CornerPanel({ site, ids }: PanelOf & { readonly ids: readonly Id[] }) {
  const run = useRun()
  const only = ids.length === 1 ? findVertex(site, ids[0]!) : undefined
  return (
    <>
      <header>
        <h2>{ids.length === 1 ? 'Corner' : `${ids.length} corners`}</h2>
      </header>
      <div className="fields">
        {ids.length > 2 ? (
          <button type="button" className="btn" onClick={() => run('line up', lineUpCorners(ids))}>
            Put them on the line from the first to the last
          </button>
        ) : null}
        {only ? <GoToPart site={site} path={only.path} value={ids[0]!} /> : null}
        {only ? (
          <PlaceFields site={site} id={ids[0]!} at={only.path.vertices[only.index]!.at} step="move corner" />
        ) : null}
        {ids.map(id => {
          const found = findVertex(site, id)!
          return (
            <MeasureField
              key={id}
              label={`Corner ${cornerLetter(found.index)}, radius`}
              lengthM={found.path.vertices[found.index]!.roundM ?? 0}
              units={site.units}
              onSet={value =>
                value < 0 ? 'A radius is zero or more.' : run('corner radius', setCornerRadius(id, value || undefined))
              }
            />
          )
        })}
      </div>
    </>
  )
}

function EntityPanel({ site, entity }: PanelOf & { readonly entity: Entity }) {
  const run = useRun()
  const { units } = site
  const finish = (value: Id, set: (finishId: Id) => Command) => (
    <ChoiceField
      label="Finish"
      value={value}
      choices={finishChoices(site.finishes)}
      onSet={id => run('finish', set(id))}
    />
  )
  const named = (value: string | undefined, set: (name: string | undefined) => Command) => (
    <TextField label="Name" value={value ?? ''} onSet={text => run('name', set(text.trim() || undefined))} />
  )
  const title = (name: string) => (
    <header>
      <h2>{name}</h2>
    </header>
  )
  const { row } = entity
  switch (entity.kind) {
    case 'slab':
      return <SlabFields site={site} slab={entity.row} />
    case 'caster':
      return <CasterFields site={site} caster={entity.row} />
    case 'opening': {
      const { kind, pool, name, path } = entity.row
      return (
        <>
          {title(name ?? 'Opening')}
          <div className="fields">
            {named(name, to => changeOpening(row.id, { name: to }))}
            <ChoiceField
              label="Kind"
              value={kind}
              choices={openingChoices}
              onSet={to =>
                run(
                  'kind of opening',
                  changeOpening(row.id, { kind: to, pool: to === 'pool' ? 'cantilevered' : undefined }),
                )
              }
            />
            {kind === 'pool' ? (
              <ChoiceField
                label="Pool edge"
                value={pool ?? 'cantilevered'}
                choices={poolChoices}
                onSet={to => run('pool edge', changeOpening(row.id, { pool: to }))}
              />
            ) : null}
            <GoToPart site={site} path={path} value={row.id} />
            <Corners site={site} vertices={path.vertices} />
          </div>
        </>
      )
    }
    case 'border': {
      const { name, widthM, placed, finishId } = entity.row
      const place = entity.owner.borders.findIndex(({ id }) => id === row.id)
      return (
        <>
          {title(name ?? 'Border')}
          <div className="fields">
            {named(name, to => changeBorder(row.id, { name: to }))}
            <MeasureField
              label="Width"
              lengthM={widthM}
              units={units}
              onSet={to => run('border width', changeBorder(row.id, { widthM: to }))}
            />
            {finish(finishId, id => changeBorder(row.id, { finishId: id }))}
            <ChoiceField
              label="Placed"
              value={placed}
              choices={placedChoices}
              onSet={to => run('border method', changeBorder(row.id, { placed: to }))}
            />
            {place > 0 ? (
              <button
                type="button"
                className="btn"
                onClick={() => run('border order', restackBorder(entity.owner.id, row.id, place - 1))}
              >
                Move outward
              </button>
            ) : null}
          </div>
        </>
      )
    }
    case 'band':
      return (
        <>
          {title(entity.row.name ?? 'Band')}
          <div className="fields">
            {named(entity.row.name, to => changeBand(row.id, { name: to }))}
            <MeasureField
              label="Width"
              lengthM={entity.row.widthM}
              units={units}
              onSet={to => run('band width', changeBand(row.id, { widthM: to }))}
            />
            {finish(entity.row.finishId, id => changeBand(row.id, { finishId: id }))}
            <ChoiceField
              label="Placed"
              value={entity.row.placed}
              choices={placedChoices}
              onSet={to => run('band method', changeBand(row.id, { placed: to }))}
            />
            <GoToPart site={site} path={entity.row.line} value={row.id} />
          </div>
        </>
      )
    case 'inset':
      return (
        <>
          {title(entity.row.name ?? 'Inset')}
          <div className="fields">
            {named(entity.row.name, to => changeInset(row.id, { name: to }))}
            {finish(entity.row.finishId, id => changeInset(row.id, { finishId: id }))}
            <ChoiceField
              label="Placed"
              value={entity.row.placed}
              choices={placedChoices}
              onSet={to => run('inset method', changeInset(row.id, { placed: to }))}
            />
            <GoToPart site={site} path={entity.row.path} value={row.id} />
          </div>
        </>
      )
    case 'obstacle':
      return (
        <>
          {title(entity.row.name ?? obstacleKinds[entity.row.kind])}
          <div className="fields">
            {named(entity.row.name, to => changeObstacle(row.id, { name: to }))}
            <ChoiceField
              label="Kind"
              value={entity.row.kind}
              choices={obstacleChoices}
              onSet={to => run('obstacle', changeObstacle(row.id, { kind: to }))}
            />
            <PlaceFields site={site} id={row.id} at={entity.row.at} />
          </div>
        </>
      )
    case 'point':
      return (
        <>
          {title('Point whose sun is asked')}
          <div className="fields">
            <TextField
              label="Words"
              value={entity.row.name}
              onSet={text =>
                text.trim() === '' ? noName : run('note', changeMarkedPoint(row.id, { name: text.trim() }))
              }
            />
            <PlaceFields site={site} id={row.id} at={entity.row.at} />
          </div>
        </>
      )
    case 'way':
      return (
        <>
          {title('Way in and out')}
          <div className="fields">
            {named(entity.row.name, to => changeWay(row.id, { name: to }))}
            <MeasureField
              label="Width"
              lengthM={entity.row.widthM}
              units={units}
              onSet={to => run('way width', changeWay(row.id, { widthM: to }))}
            />
            <PlaceFields site={site} id={row.id} at={entity.row.at} />
          </div>
          <WayHours way={entity.row} />
        </>
      )
    case 'steps':
      return <StepsFields site={site} steps={entity.row} />
    case 'furnishing':
    case 'note':
    case 'tape':
      return <ShownPanel site={site} entity={entity} />
    case 'wish':
      return (
        <>
          {title(wishWords[entity.row.kind])}
          {entity.row.kind === 'direction' ? <DirectionFields wish={entity.row} /> : null}
          <div className="fields">
            {entity.row.kind === 'forbiddenArea' ? (
              <GoToPart site={site} path={entity.row.path} value={row.id} />
            ) : (
              <GoToPoint site={site} lineId={row.id} />
            )}
          </div>
        </>
      )
    case 'spot':
      return (
        <>
          {title(spotWords[entity.spots])}
          <div className="fields">
            <PlaceFields site={site} id={row.id} at={entity.row.at} />
          </div>
        </>
      )
    case 'noGo':
      return (
        <>
          {title('Area to keep off')}
          <div className="fields">
            <GoToPart site={site} path={entity.row} value={row.id} />
          </div>
        </>
      )
  }
}

function DirectionFields({ wish }: { readonly wish: DirectionWish }) {
  const run = useRun()
  const isOfPattern = wish.relativeTo === 'pattern'
  return (
    <div className="fields">
      <NumberField
        label="Direction"
        unit={isOfPattern ? '° left of the pattern' : '° left of the plan’s right'}
        value={wish.deg}
        min={-180}
        max={180}
        step={0.5}
        onSet={deg => run('direction of the joints', changeDirection(wish.id, { deg }))}
      />
      <ChoiceField
        label="Turns with"
        value={wish.relativeTo}
        choices={[
          ['pattern', 'The pattern'],
          ['drawing', 'The plan'],
        ]}
        onSet={relativeTo => run('direction of the joints', changeDirection(wish.id, { relativeTo }))}
      />
    </div>
  )
}

/** More corners than this are rounded on the plan. */
const mostCorners = 16

function Corners({ site, vertices }: PanelOf & { readonly vertices: Slab['outline']['vertices'] }) {
  const run = useRun()
  if (vertices.length > mostCorners) return null
  return (
    <>
      {vertices.map(({ id, roundM }, i) => (
        <MeasureField
          key={id}
          label={`Corner ${cornerLetter(i)}, radius`}
          lengthM={roundM ?? 0}
          units={site.units}
          onSet={value =>
            value < 0 ? 'A radius is zero or more.' : run('corner radius', setCornerRadius(id, value || undefined))
          }
        />
      ))}
    </>
  )
}

/** Equal diagonals alone do not make a rectangle: its opposite sides are equal, too. */
const squareWords = (square: Squareness, print: Measures): string => {
  if (isSquare(square)) return 'square.'
  const outM = Math.abs(square.differenceM)
  return outM < squareWithinM
    ? `but opposite sides differ by ${print.size(square.sidesDifferM)}.`
    : `${print.size(outM)} out.`
}

function SlabFields({ site, slab }: PanelOf & { readonly slab: Slab }) {
  const run = useRun()
  const widthM = useEditorState(state => state.options.widthM)
  const print = printMeasures(site.units)
  const square = squarenessOf(site, slab.outline.id)
  const { vertices, edges } = slab.outline
  return (
    <>
      <header>
        <h2>{slab.name}</h2>
      </header>
      <div className="fields">
        <TextField
          label="Name"
          value={slab.name}
          onSet={text => (text.trim() === '' ? noName : run('name', changeSlab(slab.id, { name: text.trim() })))}
        />
        <ChoiceField
          label="Finish"
          value={slab.finishId}
          choices={finishChoices(site.finishes)}
          onSet={finishId => run('finish', changeSlab(slab.id, { finishId }))}
        />
        <MeasureField
          label="Thickness"
          lengthM={slab.thicknessM}
          units={site.units}
          onSet={to => run('thickness', changeSlab(slab.id, { thicknessM: to }))}
        />
        <MeasureField
          label="Base"
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
        <button
          type="button"
          className="btn"
          onClick={() =>
            run(
              'border',
              addBorder(slab.id, {
                pathId: slab.outline.id,
                edges: 'all',
                widthM,
                finishId: site.finishes.at(-1)?.id ?? slab.finishId,
                placed: 'withField',
              }),
            )
          }
        >
          Add a border, {print.size(widthM)} all around
        </button>
      </div>
      <GroundFields site={site} slab={slab} />
      <h3>Corners and edges</h3>
      <div className="fields">
        <Corners site={site} vertices={vertices} />
        <GoToPart site={site} path={slab.outline} value={slab.id} />
      </div>
      {square ? (
        <p className="note">
          Diagonals {print.length(square.diagonalsM[0])} and {print.length(square.diagonalsM[1])},{' '}
          {squareWords(square, print)}
          {isSquare(square) ? null : (
            <button
              type="button"
              className="as-words"
              onClick={() => run('square', squareUp(slab.outline.id, edges[0]!.id))}
            >
              Make it square about edge A to B
            </button>
          )}
        </p>
      ) : null}
    </>
  )
}

function CasterFields({ site, caster }: PanelOf & { readonly caster: Caster }) {
  const run = useRun()
  const { units } = site
  const name = (
    <TextField
      label="Name"
      value={caster.name}
      onSet={text => (text.trim() === '' ? noName : run('name', changeCaster(caster.id, { name: text.trim() })))}
    />
  )
  const height = (label: string, topM: number, baseM: number, set: (elevationM: number) => Command) => (
    <MeasureField
      label={label}
      lengthM={topM - baseM}
      units={units}
      onSet={to => (to > 0 ? run('height', set(baseM + to)) : 'Type a height greater than zero.')}
    />
  )
  const title = (
    <header>
      <h2>{caster.name}</h2>
    </header>
  )
  if (caster.kind === 'building') {
    const { roof, footprint } = caster
    return (
      <>
        {title}
        <div className="fields">
          {name}
          {height('Eave above ground', caster.eaveM, caster.baseM, eaveM => changeCaster(caster.id, { eaveM }))}
          <MeasureField
            label="Overhang"
            lengthM={caster.overhangM}
            units={units}
            onSet={overhangM => run('overhang', changeCaster(caster.id, { overhangM }))}
          />
          <ChoiceField
            label="Roof"
            value={roof.form}
            choices={roofChoices}
            onSet={form =>
              run(
                'roof',
                changeCaster(caster.id, {
                  roof:
                    form === 'flat'
                      ? { form }
                      : {
                          form,
                          risePer12: roof.form === 'flat' ? 6 : roof.risePer12,
                          ridgeAlongEdge: footprint.edges[0]!.id,
                        },
                }),
              )
            }
          />
          {roof.form === 'flat' ? null : (
            <>
              <NumberField
                label="Rise in 12"
                value={roof.risePer12}
                min={0.5}
                max={24}
                step={0.5}
                onSet={risePer12 => run('roof', changeCaster(caster.id, { roof: { ...roof, risePer12 } }))}
              />
              {roof.form === 'gable' ? (
                <ChoiceField
                  label="Ridge runs along"
                  value={roof.ridgeAlongEdge}
                  choices={footprint.edges.map(
                    ({ id }, i) =>
                      [id, `edge ${cornerLetter(i)} to ${cornerLetter((i + 1) % footprint.edges.length)}`] as const,
                  )}
                  onSet={ridgeAlongEdge => run('ridge', changeCaster(caster.id, { roof: { ...roof, ridgeAlongEdge } }))}
                />
              ) : null}
            </>
          )}
          <GoToPart site={site} path={footprint} value={caster.id} />
        </div>
        <HeightByShadow key={caster.id} site={site} caster={caster} />
      </>
    )
  }
  if (caster.kind === 'wall')
    return (
      <>
        {title}
        <div className="fields">
          {name}
          {height('Height', caster.topM, caster.baseM, topM => changeCaster(caster.id, { topM }))}
          <NumberField
            label="Solid"
            unit="%"
            value={Math.round(caster.solidity * 100)}
            min={0}
            max={100}
            onSet={to => run('fence', changeCaster(caster.id, { solidity: to / 100 }))}
          />
          <GoToPoint site={site} lineId={caster.id} />
        </div>
        <HeightByShadow key={caster.id} site={site} caster={caster} />
      </>
    )
  if (caster.kind === 'tree')
    return (
      <>
        {title}
        <div className="fields">
          {name}
          {height('Height', caster.topM, caster.baseM, topM => changeCaster(caster.id, { topM }))}
          <MeasureField
            label="Lowest leaves"
            lengthM={caster.trunkM - caster.baseM}
            units={units}
            onSet={to => run('tree', changeCaster(caster.id, { trunkM: caster.baseM + to }))}
          />
          <MeasureField
            label="Crown radius"
            lengthM={caster.crownRadiusM}
            units={units}
            onSet={to => run('crown', changeCaster(caster.id, { crownRadiusM: to }))}
          />
          <ChoiceField
            label="Leaves"
            value={caster.density}
            choices={densityChoices}
            onSet={density => run('leaves', changeCaster(caster.id, { density }))}
          />
          <ChoiceField
            label="In winter"
            value={caster.leaves === 'evergreen' ? 'green' : 'bare'}
            choices={[
              ['bare', 'Bare'],
              ['green', 'Green'],
            ]}
            onSet={to =>
              run(
                'leaves',
                changeCaster(caster.id, { leaves: to === 'green' ? 'evergreen' : { from: '04-15', to: '10-31' } }),
              )
            }
          />
          <PlaceFields site={site} id={caster.id} at={caster.at} />
        </div>
        <HeightByShadow key={caster.id} site={site} caster={caster} />
      </>
    )
  return (
    <>
      {title}
      <div className="fields">
        {name}
        <MeasureField
          label="Underside above the site mark"
          lengthM={caster.undersideM}
          units={units}
          onSet={to =>
            run('cover', changeCaster(caster.id, { undersideM: to, topM: to + caster.topM - caster.undersideM }))
          }
        />
        {typeof caster.light === 'string' ? (
          <ChoiceField
            label="Light"
            value={caster.light}
            choices={lightChoices}
            onSet={light => run('light', changeCaster(caster.id, { light }))}
          />
        ) : null}
        <GoToPart site={site} path={caster.outline} value={caster.id} />
      </div>
    </>
  )
}
