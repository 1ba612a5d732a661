/** The drawing actions: the words of each, how it is drawn, and the one edit that it comes to. */
import { addNoGo, addSpot, addWay } from '../../../core/document/commands/addAccess'
import { addBuilding, addCover, addTree, addWall } from '../../../core/document/commands/addCaster'
import { addFurnishing, addNote, addTape } from '../../../core/document/commands/addShown'
import { addSlab } from '../../../core/document/commands/addSlab'
import { addMarkedPoint, addWish } from '../../../core/document/commands/addWish'
import type { Shape } from '../../../core/document/commands/drawShape'
import type { Command } from '../../../core/document/commands/editSite'
import { freshName } from '../../../core/document/commands/freshName'
import { jointEndAt } from '../../../core/document/commands/jointEndAt'
import { addBand, addInset, addObstacle, addOpening } from '../../../core/document/commands/slabParts'
import { ringContains } from '../../../core/geometry/contains'
import { resolvePath } from '../../../core/geometry/resolvePath'
import { foldDeg } from '../../../core/pours/wishes/wishedDirection'
import type { Cover, Tree } from '../../../shared/document/caster'
import type { JointWish } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Furnishing } from '../../../shared/document/shown'
import type { Site } from '../../../shared/document/site'
import type { Obstacle, Opening, Placed, PoolEdge, Slab } from '../../../shared/document/slab'
import { drawBaseRectangle } from './drawBaseRectangle'
import { drawCircle } from './drawCircle'
import { drawCorners } from './drawCorners'
import { drawFreehand } from './drawFreehand'
import { type Drawing, type Drawn, type Mark, startPrompt } from './drawing'
import { drawRectangle } from './drawRectangle'
import { pickPoints } from './pickPoints'
import { placeSpot } from './placeSpot'

export const actionIds = [
  'select',
  'slab',
  'opening',
  'border',
  'building',
  'fence',
  'tree',
  'cover',
  'tape',
  'joint',
  'access',
  'furniture',
  'note',
] as const
export type ActionId = (typeof actionIds)[number]

export type Form = 'corners' | 'rectangle' | 'base' | 'circle' | 'freehand'

/** What the next thing drawn will be like. Kept while the site is open. */
export interface Options {
  readonly form: Form
  readonly edge: 'straight' | 'arc'
  readonly inSlab: Opening['kind'] | Obstacle['kind']
  readonly pool: PoolEdge
  readonly strip: 'border' | 'band' | 'inset'
  readonly widthM: number
  readonly finishId: Id | null
  readonly placed: Placed
  readonly stories: number | null
  readonly eaveM: number
  readonly overhangM: number
  readonly roof: 'flat' | 'gable' | 'hip'
  readonly risePer12: number
  readonly fenceHeightM: number
  readonly solidity: number
  readonly treeHeightM: number
  readonly trunkHeightM: number
  readonly crownRadiusM: number
  readonly density: Tree['density']
  readonly evergreen: boolean
  readonly undersideM: number
  readonly light: Extract<Cover['light'], string>
  readonly wish: JointWish['kind']
  /** Counter-clockwise, from the pattern of the slab. */
  readonly wishDeg: number
  readonly access: 'truck' | 'pump' | 'washout' | 'noGo' | 'way'
  readonly wayWidthM: number
  readonly tape: 'tie' | 'dimension'
  readonly furniture: Furnishing['kind']
  /** Counter-clockwise. */
  readonly furnitureTurnDeg: number
  readonly noteKind: 'note' | 'sunPoint'
  readonly note: string
}

const foot = 0.3048

/** Usual sizes; common practice, no source. Overhang 18 in, stories 10 ft. */
export const usualOptions: Options = {
  form: 'corners',
  edge: 'straight',
  inSlab: 'planter',
  pool: 'cantilevered',
  strip: 'border',
  widthM: foot,
  finishId: null,
  placed: 'withField',
  stories: 1,
  eaveM: 10 * foot,
  overhangM: 1.5 * foot,
  roof: 'gable',
  risePer12: 6,
  fenceHeightM: 6 * foot,
  solidity: 1,
  treeHeightM: 26 * foot,
  trunkHeightM: 6 * foot,
  crownRadiusM: 9 * foot,
  density: 'medium',
  evergreen: false,
  undersideM: 8 * foot,
  light: 'none',
  wish: 'required',
  wishDeg: 0,
  access: 'truck',
  wayWidthM: 3 * foot,
  tape: 'tie',
  furniture: 'chair',
  furnitureTurnDeg: 0,
  noteKind: 'note',
  note: 'Note',
}

export const openingKinds: Readonly<Record<Opening['kind'], string>> = {
  pool: 'Pool',
  planter: 'Planter',
  drain: 'Drain',
  column: 'Column',
  other: 'Other opening',
}
export const obstacleKinds: Readonly<Record<Obstacle['kind'], string>> = {
  downspout: 'Downspout',
  cleanout: 'Cleanout',
  post: 'Post',
  hoseBib: 'Hose bib',
  sprinkler: 'Sprinkler',
  valveBox: 'Valve box',
  sleeve: 'Sleeve',
  other: 'Other',
}

export const furnitureKinds: Readonly<Record<Furnishing['kind'], string>> = {
  chair: 'Chair',
  lounge: 'Lounge chair',
  table: 'Table',
  roundTable: 'Round table',
  grill: 'Grill',
  car: 'Car',
}

export const isOpening = (kind: Options['inSlab']): kind is Opening['kind'] => kind in openingKinds

export const actionWords: Readonly<Record<ActionId, string>> = {
  select: 'Select',
  slab: 'Slab',
  opening: 'Opening',
  border: 'Border',
  building: 'Building',
  fence: 'Fence',
  tree: 'Tree',
  cover: 'Cover',
  tape: 'Tape',
  joint: 'Joint line',
  access: 'Access',
  furniture: 'Furniture',
  note: 'Note',
}

/** How far a fit may leave the hand: 3 in. Own choice. */
const strokeToleranceM = 0.0762

/** Actions that draw a closed shape and leave its form to the user. */
export const hasForms = (action: ActionId, o: Options): boolean =>
  action === 'slab' ||
  action === 'cover' ||
  action === 'building' ||
  (action === 'opening' && isOpening(o.inSlab)) ||
  (action === 'border' && o.strip === 'inset') ||
  (action === 'joint' && o.wish === 'forbiddenArea') ||
  (action === 'access' && o.access === 'noGo')

/** Whether what was set of the one stays good for the other: a line is no shape, and two points are no line. */
export const isDrawnAlike = (action: ActionId, a: Options, b: Options): boolean =>
  hasForms(action, a) === hasForms(action, b) &&
  (action !== 'border' || a.strip === b.strip) &&
  (action !== 'tape' || a.tape === b.tape) &&
  (action !== 'joint' || (a.wish === 'forbiddenLine') === (b.wish === 'forbiddenLine'))

const draws = (what: 'line' | 'spot', mark: Mark | null, words: string, edge: Options['edge']): Drawing =>
  what === 'spot' ? placeSpot(mark, words) : drawCorners({ closes: false, mark, edge, first: words })

const spotWords: Readonly<Partial<Record<Options['access'], string>>> = {
  truck: 'where the truck stands',
  pump: 'where the pump stands',
  washout: 'where the chute is washed out',
  way: 'the door or gate',
}

/** The chart an action starts with; null where it works on what is there already. */
export function startDrawing(action: ActionId, o: Options, mark: Mark | null): Drawing | null {
  if (hasForms(action, o)) {
    if (o.form === 'rectangle') return drawRectangle(mark)
    if (o.form === 'base') return drawBaseRectangle(mark)
    if (o.form === 'circle') return drawCircle(mark)
    if (o.form === 'freehand') return drawFreehand(strokeToleranceM)
    return drawCorners({ closes: true, mark, edge: o.edge })
  }
  switch (action) {
    case 'opening':
      return draws(
        'spot',
        mark,
        `where the ${obstacleKinds[o.inSlab as Obstacle['kind']].toLowerCase()} stands`,
        o.edge,
      )
    case 'border':
      return o.strip === 'band' ? draws('line', mark, 'where the band starts', o.edge) : null
    case 'fence':
      return draws('line', mark, 'where the fence starts', 'straight')
    case 'tree':
      return draws('spot', mark, 'where the trunk stands', o.edge)
    case 'joint':
      if (o.wish === 'forbiddenLine') return draws('line', mark, 'where the line starts', 'straight')
      return pickPoints(
        o.wish === 'direction'
          ? ['Click two points for the joints to run along, or type the direction.', 'Click the second.']
          : [startPrompt(mark, 'where the joint starts'), 'Click where it ends, or type how far and where it goes.'],
        mark,
      )
    case 'access':
      return draws('spot', mark, spotWords[o.access] ?? 'the place', o.edge)
    case 'tape':
      return o.tape === 'dimension'
        ? pickPoints(['Click where the tape starts.', 'Click where it ends, or type how far and where it goes.'], mark)
        : null
    case 'furniture':
      return draws('spot', mark, `where the ${furnitureKinds[o.furniture].toLowerCase()} stands`, o.edge)
    case 'note':
      return draws(
        'spot',
        mark,
        o.noteKind === 'note' ? 'what the note is about' : 'the point whose sun is asked',
        o.edge,
      )
    default:
      return null
  }
}

/** The slab a part is drawn on: the one it lies in, else the chosen one, else the only one near. */
export function slabFor(site: Site, at: Pt | undefined, selection: readonly Id[]): Slab | undefined {
  const inside = at && site.slabs.find(slab => ringContains(resolvePath(slab.outline, slab.id).ring, at))
  return inside ?? site.slabs.find(({ id }) => selection.includes(id)) ?? site.slabs[0]
}

const firstPoint = (drawn: Drawn): Pt | undefined => {
  if (drawn.kind === 'spot') return drawn.at
  if (drawn.kind === 'line') return drawn.corners[0]?.at
  const { shape } = drawn
  return shape.kind === 'corners' ? shape.corners[0]?.at : shape.kind === 'circle' ? shape.center : shape.at
}

const namesOf = (list: readonly { readonly name: string }[]): ReadonlySet<string> =>
  new Set(list.map(({ name }) => name))

export interface Made {
  /** Names the undo step. */
  readonly name: string
  readonly command: Command
}

/** The edit a drawing comes to; null where it is not enough for one yet, or where there is no slab to draw on. */
export function madeOf(action: ActionId, drawn: Drawn, o: Options, site: Site, selection: readonly Id[]): Made | null {
  const slab = slabFor(site, firstPoint(drawn), selection)
  const finishId = o.finishId ?? site.finishes.at(-1)?.id ?? ''
  const shape = drawn.kind === 'shape' ? drawn.shape : null
  const line = drawn.kind === 'line' && drawn.corners.length > 1 ? drawn.corners : null
  const at = drawn.kind === 'spot' ? drawn.at : null
  const casterName = (word: string) => freshName(word, namesOf(site.casters))
  switch (action) {
    case 'slab':
      return shape
        ? { name: 'slab', command: addSlab({ outline: shape, name: freshName('Patio', namesOf(site.slabs)) }) }
        : null
    case 'opening':
      return slab ? inSlab(slab, shape, at, o) : null
    case 'border':
      if (!slab) return null
      if (line)
        return {
          name: 'band',
          command: addBand(slab.id, { line: { corners: line }, widthM: o.widthM, finishId, placed: o.placed }),
        }
      return shape ? { name: 'inset', command: addInset(slab.id, { shape, finishId, placed: o.placed }) } : null
    case 'building':
      return shape ? { name: 'building', command: building(casterName('House'), shape, o) } : null
    case 'fence':
      return line
        ? {
            name: 'fence',
            command: addWall({
              name: casterName('Fence'),
              line: line.map(corner => corner.at),
              heightM: o.fenceHeightM,
              solidity: o.solidity,
            }),
          }
        : null
    case 'tree':
      return at ? { name: 'tree', command: tree(casterName('Tree'), at, o) } : null
    case 'cover':
      return shape
        ? {
            name: 'cover',
            command: addCover({
              name: casterName('Cover'),
              outline: shape,
              undersideAboveGroundM: o.undersideM,
              depthM: foot / 2,
              light: o.light,
            }),
          }
        : null
    case 'joint':
      return slab ? joint(site, slab, line?.map(corner => corner.at) ?? null, shape, o) : null
    case 'access':
      return access(at, shape, o)
    case 'tape':
      return line ? { name: 'tape dimension', command: addTape(line[0]!.at, line.at(-1)!.at) } : null
    case 'furniture':
      return at
        ? {
            name: furnitureKinds[o.furniture].toLowerCase(),
            command: addFurnishing(o.furniture, at, o.furnitureTurnDeg),
          }
        : null
    case 'note':
      if (o.noteKind === 'note') return at ? { name: 'note', command: addNote(at, o.note.trim() || 'Note') } : null
      return slab && at
        ? {
            name: 'marked point',
            command: addMarkedPoint(slab.id, freshName(o.note.trim() || 'Point', namesOf(site.points)), at),
          }
        : null
    default:
      return null
  }
}

function inSlab(slab: Slab, shape: Shape | null, at: Pt | null, { inSlab: kind, pool }: Options): Made | null {
  if (isOpening(kind))
    return shape
      ? {
          name: openingKinds[kind].toLowerCase(),
          command: addOpening(slab.id, { shape, kind, ...(kind === 'pool' ? { pool } : {}) }),
        }
      : null
  return at ? { name: obstacleKinds[kind].toLowerCase(), command: addObstacle(slab.id, { kind, at }) } : null
}

function building(name: string, footprint: Shape, o: Options): Command {
  const height = o.stories === null ? { eaveAboveGroundM: o.eaveM } : { stories: o.stories }
  return site => {
    const whole = { name, footprint, height, overhangM: o.overhangM }
    if (o.roof === 'flat') return addBuilding({ ...whole, roof: { form: 'flat' } })(site)
    // The ridge runs along the longer side, as most do; it can be turned later.
    const alongEdge = footprint.kind === 'rectangle' && footprint.depthM > footprint.widthM ? 1 : 0
    return addBuilding({ ...whole, roof: { form: o.roof, risePer12: o.risePer12, alongEdge } })(site)
  }
}

const tree = (name: string, at: Pt, o: Options): Command =>
  addTree({
    name,
    at,
    heightM: o.treeHeightM,
    trunkHeightM: o.trunkHeightM,
    crownRadiusM: o.crownRadiusM,
    density: o.density,
    leaves: o.evergreen ? 'evergreen' : { from: '04-15', to: '10-31' },
  })

/** The direction of the joints, as it is typed or pointed out: counted from the pattern of the slab. */
export const directionWish = (slab: Slab, deg: number): Made => ({
  name: 'direction of the joints',
  // To a tenth, as it is told; never −0, which a file does not keep.
  command: addWish(slab.id, { kind: 'direction', deg: Math.round(foldDeg(deg) * 10) / 10 + 0, relativeTo: 'pattern' }),
})

function joint(
  site: Site,
  slab: Slab,
  line: readonly Pt[] | null,
  shape: Shape | null,
  { wish }: Options,
): Made | null {
  if (wish === 'forbiddenArea')
    return shape ? { name: 'area without joints', command: addWish(slab.id, { kind: wish, shape }) } : null
  if (!line) return null
  if (wish === 'forbiddenLine') return { name: 'line without joints', command: addWish(slab.id, { kind: wish, line }) }
  if (wish === 'direction') {
    const [[ax, ay], [bx, by]] = [line[0]!, line.at(-1)!]
    const finish = site.finishes.find(({ id }) => id === slab.finishId)
    return directionWish(slab, (Math.atan2(by - ay, bx - ax) * 180) / Math.PI - (finish?.patternDeg ?? 0))
  }
  const ends = [jointEndAt(slab, line[0]!), jointEndAt(slab, line.at(-1)!)] as const
  return { name: 'joint line', command: addWish(slab.id, { kind: 'required', line: ends }) }
}

const spotNames = { truck: 'truck spot', pump: 'pump spot', washout: 'washout' } as const

function access(at: Pt | null, shape: Shape | null, { access: what, wayWidthM }: Options): Made | null {
  if (what === 'noGo') return shape ? { name: 'area to keep off', command: addNoGo(shape) } : null
  if (!at) return null
  if (what === 'way')
    return {
      name: 'way in and out',
      command: addWay({
        at,
        widthM: wayWidthM,
        open: [{ weekdays: [1, 2, 3, 4, 5, 6, 7], from: '07:00', to: '22:00' }],
      }),
    }
  return { name: spotNames[what], command: addSpot(what, at) }
}
