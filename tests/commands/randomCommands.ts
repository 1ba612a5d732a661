/** Commands drawn at random for a site: what a pair of hands might do next. */
import { addNoGo, addSpot, addWay, setCarts, setChuteReach, setWayHours } from '../../core/document/commands/addAccess'
import { addBuilding, addCover, addTree, addWall } from '../../core/document/commands/addCaster'
import { addFurnishing, addNote, addTape, setTapeMeasured } from '../../core/document/commands/addShown'
import { addSlab } from '../../core/document/commands/addSlab'
import { addMarkedPoint, addWish } from '../../core/document/commands/addWish'
import {
  changeBand,
  changeBorder,
  changeCaster,
  changeDirection,
  changeFinish,
  changeFurnishing,
  changeInset,
  changeMarkedPoint,
  changeNote,
  changeObstacle,
  changeOpening,
  changeSlab,
  changeSteps,
  changeWay,
} from '../../core/document/commands/changeEntity'
import { copySelection, pasteFrom } from '../../core/document/commands/copySelection'
import { deleteFinish, deleteSelection } from '../../core/document/commands/deleteSelection'
import { deleteVertex } from '../../core/document/commands/deleteVertex'
import type { Command } from '../../core/document/commands/editSite'
import { extendLine } from '../../core/document/commands/extendLine'
import { editablePaths, isClosed } from '../../core/document/commands/findPath'
import { addLinePoint, pointLines } from '../../core/document/commands/linePoints'
import { lineUp, lineUpCorners } from '../../core/document/commands/lineUp'
import {
  changeTap,
  logReading,
  logTap,
  removeTap,
  setLearnedFrom,
  setLoadReading,
  setLogNotes,
} from '../../core/document/commands/logTaps'
import { mirrorSelection, moveSelection, nudge, turnSelection } from '../../core/document/commands/moveSelection'
import { moveVertex } from '../../core/document/commands/moveVertex'
import { fadePicture, movePicture, scalePicture, turnPicture } from '../../core/document/commands/placePicture'
import { setArc } from '../../core/document/commands/setArc'
import { setBid } from '../../core/document/commands/setBid'
import { setCircleRadius } from '../../core/document/commands/setCircleRadius'
import { setCornerRadius } from '../../core/document/commands/setCornerRadius'
import { setDimension } from '../../core/document/commands/setDimension'
import { setEdgeRadius, setEdgeRise } from '../../core/document/commands/setEdgeRise'
import { addMaterial, changeMaterial, removeMaterial, setOnHand } from '../../core/document/commands/setMaterials'
import { addPrice, changePrice, movePrice, removePrice } from '../../core/document/commands/setPrices'
import {
  addFinish,
  removePicture,
  setCalendar,
  setCapacity,
  setConditions,
  setCoordinates,
  setCrew,
  setMix,
  setName,
  setNorth,
  setPicture,
  setPlace,
  setSetting,
  setUnits,
} from '../../core/document/commands/setSite'
import { setWallLength } from '../../core/document/commands/setWallLength'
import { siteEntities } from '../../core/document/commands/siteEntities'
import {
  addBand,
  addBorder,
  addInset,
  addObstacle,
  addOpening,
  addSteps,
  restackBorder,
  setAgainstExisting,
  setBaseReadings,
  setThickened,
} from '../../core/document/commands/slabParts'
import { splitEdge } from '../../core/document/commands/splitEdge'
import { squareUp } from '../../core/document/commands/squareUp'
import { linePointId } from '../../core/geometry/linePointId'
import { kidneyPoolDeck } from '../../samples/sites/kidneyPoolDeck'
import type { Id } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'

export type Random = () => number

const nothing: Command = site => ({ ok: true, value: site, findings: [], made: [] })
const other = kidneyPoolDeck()

/** Commands with what a hand might ask of them, by their names; empty where the site has nothing for one. */
export type DrawnCommands = Readonly<Record<string, readonly Command[]>>

export const drawCommands = (site: Site, random: Random): DrawnCommands => {
  const one = <T>(list: readonly T[]): T | undefined => list[Math.floor(random() * list.length)]
  const between = (a: number, b: number) => a + random() * (b - a)
  const isSo = (share = 0.5) => random() < share
  const spot = () => [between(-20, 30), between(-20, 30)] as const
  const row = <T>(list: readonly T[] | undefined, make: (found: T) => Command): readonly Command[] => {
    const found = one(list ?? [])
    return found === undefined ? [] : [make(found)]
  }
  const paths = editablePaths(site)
  const path = one(paths)
  const vertex = path && one(path.vertices)
  const edge = path && one(path.edges)
  const { slabs } = site
  const onSlab = (make: (slab: Site['slabs'][number]) => Command) => row(slabs, make)
  const onEdge = (make: (id: Id) => Command) => row(edge && [edge], ({ id }) => make(id))
  const onVertex = (make: (found: NonNullable<typeof vertex>) => Command) => row(vertex && [vertex], make)
  const entities = siteEntities(site).map(({ row }) => row.id)
  const some = <T>(list: readonly T[]) => list.filter(() => isSo())
  const chosen = Array.from({ length: 1 + Math.floor(random() * 3) }, () => one(entities) ?? '')
  const otherIds = siteEntities(other).map(({ row }) => row.id)
  const finishId = one(site.finishes)!.id
  const edgesOf = (slab: Site['slabs'][number]) => slab.outline.edges.map(({ id }) => id)
  const shape = {
    kind: 'rectangle',
    at: spot(),
    widthM: between(0.3, 4),
    depthM: between(0.3, 4),
    turnDeg: between(0, 360),
  } as const
  const circle = { kind: 'circle', center: spot(), radiusM: between(0.2, 2) } as const
  const placed = one(['withField', 'before', 'after', 'sawnLater'] as const)!
  const name = one(['East', 'West'])!
  const arcs = paths.flatMap(({ edges }) => edges.filter(({ riseM }) => riseM !== undefined))
  const openLine = one(paths.filter(each => !isClosed(each)))
  const fourSided = paths.filter(({ vertices, edges }) => vertices.length === 4 && edges.length === 4)
  const walls = site.casters.flatMap(caster => (caster.kind === 'wall' ? [caster] : []))
  const directions = site.wishes.filter(({ kind }) => kind === 'direction')
  const pours = site.accepted.flatMap(part => part.pours)
  const taps = (site.log ?? []).flatMap(entry => entry.taps ?? [])
  const conditions = {
    kind: 'day',
    date: '2026-07-21',
    highC: 33,
    lowC: 17,
    dewPointC: 8,
    windMs: 3,
    sky: 'sunny',
  } as const
  const start = { date: '2026-07-21', planned: '', begun: { conditions, mix: {}, thicknessM: 0.1, strips: [] } }
  const atUtc = `2026-07-21T${12 + Math.floor(random() * 8)}:30Z`
  const hours = [{ weekdays: [1, 2], from: '07:00', to: '17:00' }]
  const picture = {
    assetId: one(['a', 'b'])!.repeat(64),
    originAt: spot(),
    metersPerPixel: between(0.01, 0.1),
    turnDeg: 0,
    fade: 0.4,
  }
  const measure = [
    { radiusM: between(0.5, 6) },
    { riseM: between(0.1, 2) },
    { lengthM: between(0.5, 6), moves: 'both' as const },
  ]
  return {
    moveVertex: onVertex(({ id, at }) =>
      moveVertex(id, isSo(0.7) ? [at[0] + between(-2, 2), at[1] + between(-2, 2)] : spot()),
    ),
    deleteVertex: onVertex(({ id }) => deleteVertex(id)),
    setCornerRadius: onVertex(({ id }) => setCornerRadius(id, isSo(0.3) ? undefined : between(0.1, 2))),
    splitEdge: onEdge(id => splitEdge(id, between(0.1, 0.9))),
    setEdgeRise: onEdge(id => setEdgeRise(id, isSo(0.4) ? undefined : between(-2, 2))),
    setEdgeRadius: onEdge(id =>
      setEdgeRadius(id, between(1, 20), { bulges: isSo() ? 'left' : 'right', longWay: isSo(0.2) }),
    ),
    setDimension: onEdge(id =>
      setDimension(id, between(0.5, 15), {
        moves: one(['start', 'end', 'both'] as const)!,
        with: one(['corner', 'side'] as const)!,
        along: one(['edge', 'chord'] as const)!,
      }),
    ),
    setArc: row(arcs, ({ id }) => setArc([id], one(measure)!)),
    setCircleRadius: row(arcs, ({ id }) => setCircleRadius(id, between(0.3, 3))),
    squareUp: row(fourSided, ({ id, edges }) => squareUp(id, one(edges)!.id)),
    lineUpCorners: row(path && [path], ({ vertices }) => lineUpCorners(some(vertices.map(({ id }) => id)))),
    extendLine: row(openLine && [openLine], ({ id }) =>
      extendLine(id, one(['start', 'end'] as const)!, { at: spot(), ...(isSo() ? { riseM: between(-1, 1) } : {}) }),
    ),
    addLinePoint: row(
      pointLines(site).filter(({ hasMany }) => hasMany),
      ({ id, points }) => addLinePoint(linePointId(id, Math.floor(random() * (points.length - 1)))),
    ),
    setWallLength: row(walls, ({ id }) => setWallLength(id, 0, between(1, 9), one(['start', 'end', 'both'] as const)!)),
    addOpening: onSlab(({ id }) => addOpening(id, { shape: isSo() ? shape : circle, kind: 'planter' })),
    addBorder: onSlab(slab =>
      addBorder(slab.id, {
        pathId: slab.outline.id,
        edges: some(edgesOf(slab)),
        widthM: between(0.1, 0.5),
        finishId,
        placed,
      }),
    ),
    addBand: onSlab(({ id }) =>
      addBand(id, { line: { corners: [{ at: spot() }, { at: spot() }] }, widthM: 0.3, finishId, placed }),
    ),
    addInset: onSlab(({ id }) => addInset(id, { shape, finishId, placed: 'withField' })),
    addSteps: onSlab(slab =>
      addSteps(slab.id, {
        edgeId: one(edgesOf(slab))!,
        fromT: random(),
        widthM: 1,
        risers: 2,
        riserM: 0.15,
        treadM: 0.3,
      }),
    ),
    addObstacle: onSlab(({ id }) => addObstacle(id, { kind: 'post', at: spot() })),
    setThickened: onSlab(slab =>
      setThickened(slab.id, some(edgesOf(slab)), isSo(0.3) ? null : { depthM: 0.2, widthM: 0.3 }),
    ),
    setAgainstExisting: onSlab(slab => setAgainstExisting(slab.id, some(edgesOf(slab)), isSo(0.6))),
    setBaseReadings: onSlab(({ id }) =>
      setBaseReadings(id, isSo(0.3) ? [] : [{ at: spot(), depthM: between(0.05, 0.2) }]),
    ),
    restackBorder: row(
      slabs.filter(({ borders }) => borders.length > 0),
      ({ id, borders }) => restackBorder(id, one(borders)!.id, Math.floor(random() * borders.length)),
    ),
    addWish: [
      ...onSlab(({ id }) => addWish(id, { kind: 'forbiddenArea', shape })),
      ...onSlab(({ id }) => addWish(id, { kind: 'forbiddenLine', line: [spot(), spot()] })),
      ...onSlab(({ id }) => addWish(id, { kind: 'direction', deg: between(0, 180), relativeTo: 'drawing' })),
      ...onSlab(({ id, outline: { vertices, edges } }) =>
        addWish(id, {
          kind: 'required',
          line: [
            { anchor: { on: 'edge', edgeId: one(edges)!.id, t: random() }, last: spot() },
            { anchor: { on: 'vertex', vertexId: vertices[0]!.id }, last: vertices[0]!.at },
          ],
        }),
      ),
    ],
    addMarkedPoint: onSlab(({ id }) => addMarkedPoint(id, 'Door', spot())),
    changeSlab: onSlab(({ id }) => changeSlab(id, { thicknessM: between(0.1, 0.2) })),
    changeOpening: row(
      slabs.flatMap(slab => slab.openings),
      ({ id }) => changeOpening(id, { name }),
    ),
    changeBorder: row(
      slabs.flatMap(slab => slab.borders),
      ({ id }) => changeBorder(id, { widthM: between(0.1, 0.4) }),
    ),
    changeBand: row(
      slabs.flatMap(slab => slab.bands),
      ({ id }) => changeBand(id, { widthM: between(0.1, 0.4) }),
    ),
    changeInset: row(
      slabs.flatMap(slab => slab.insets),
      ({ id }) => changeInset(id, { name }),
    ),
    changeSteps: row(
      slabs.flatMap(slab => slab.steps),
      ({ id }) => changeSteps(id, { risers: 1 + Math.floor(random() * 4) }),
    ),
    changeObstacle: row(
      slabs.flatMap(slab => slab.obstacles),
      ({ id }) => changeObstacle(id, { at: spot() }),
    ),
    changeFinish: row(site.finishes, ({ id }) => changeFinish(id, { name })),
    changeMarkedPoint: row(site.points, ({ id }) => changeMarkedPoint(id, { name })),
    changeDirection: row(directions, ({ id }) => changeDirection(id, { deg: between(0, 180) })),
    changeFurnishing: row(site.furnishings, ({ id }) => changeFurnishing(id, { widthM: between(0.3, 2) })),
    changeNote: row(site.notes, ({ id }) => changeNote(id, { text: name })),
    changeWay: row(site.access?.ways, ({ id }) => changeWay(id, { widthM: between(0.6, 2) })),
    changeCaster: row(site.casters, ({ id }) => changeCaster(id, { name })),
    moveSelection: [
      moveSelection(chosen, spot()),
      ...onVertex(({ id }) => moveSelection([id], spot())),
      ...onEdge(id => moveSelection([id], [between(-1, 1), between(-1, 1)])),
      ...onSlab(({ id }) => moveSelection([id], spot())),
    ],
    turnSelection: [
      turnSelection(chosen, spot(), between(-180, 180)),
      ...onSlab(({ id }) => turnSelection([id], spot(), between(0, 360))),
    ],
    mirrorSelection: [
      mirrorSelection(chosen, spot(), spot()),
      ...onSlab(({ id }) => mirrorSelection([id], spot(), spot())),
    ],
    copySelection: [copySelection(chosen, spot())],
    pasteFrom: [pasteFrom(other, some(otherIds).slice(0, 3), spot())],
    deleteSelection: [deleteSelection(chosen), ...onVertex(({ id }) => deleteSelection([id]))],
    addFinish: [addFinish({ name, pattern: 'broom', color: '#c8c4bb' })],
    deleteFinish: site.finishes.map(({ id }) => deleteFinish(id)),
    lineUp: [lineUp(chosen, one(['left', 'top', 'middleUp'] as const)!)],
    nudge: [nudge(chosen, 'left', 0.0254)],
    addSlab: [addSlab({ outline: isSo() ? shape : circle, name: 'More' })],
    addBuilding: [
      addBuilding({
        name: 'Shed',
        footprint: shape,
        height: { stories: 1 },
        roof: { form: 'gable', risePer12: 4, alongEdge: 1 },
      }),
    ],
    addWall: [addWall({ name: 'Fence', line: [spot(), spot()], heightM: 1.8 })],
    addTree: [
      addTree({
        name: 'Oak',
        at: spot(),
        heightM: 9,
        trunkHeightM: 2,
        crownRadiusM: 3,
        density: 'open',
        leaves: 'evergreen',
      }),
    ],
    addCover: [addCover({ name: 'Shade', outline: shape, undersideAboveGroundM: 2.5, depthM: 0.1, light: 'half' })],
    addSpot: [addSpot(one(['truck', 'pump', 'washout'] as const)!, spot())],
    addNoGo: [addNoGo(shape)],
    addWay: [addWay({ at: spot(), widthM: 1, open: [] })],
    setWayHours: row(site.access?.ways, ({ id }) => setWayHours(id, isSo() ? hours : [])),
    setCarts: [setCarts(one(['powerBuggy', 'handCart'] as const)!)],
    setChuteReach: [setChuteReach(between(3, 6))],
    addFurnishing: [addFurnishing(one(['chair', 'roundTable', 'car'] as const)!, spot(), between(0, 360))],
    addNote: [addNote(spot(), 'Gate')],
    addTape: [
      addTape(vertex?.at ?? spot(), one(paths)?.vertices[0]?.at ?? spot()),
      addTape(vertex?.at ?? spot(), spot()),
    ],
    setTapeMeasured: row(site.tapes, ({ id }) => setTapeMeasured(id, isSo() ? undefined : between(1, 9))),
    addMaterial: [addMaterial({ name, kind: 'sealer', unit: 'gal', ratePerM2: 0.1, packageSize: 5, wasteShare: 0.1 })],
    changeMaterial: row(site.materials, ({ id }) => changeMaterial(id, { packageSize: between(1, 9) })),
    removeMaterial: row(site.materials, ({ id }) => removeMaterial(id)),
    setOnHand: row(site.materials, ({ id }) => setOnHand(id, isSo(0.3) ? undefined : between(0, 9))),
    addPrice: [addPrice({ name, per: 'ft²', amount: between(1, 20), currency: 'USD' })],
    changePrice: row(site.prices, ({ id }) => changePrice(id, { name })),
    movePrice: row(site.prices?.slice(0, -1), ({ id }) => movePrice(id, 1)),
    removePrice: row(site.prices, ({ id }) => removePrice(id)),
    setBid: [setBid({ taxPercent: 8.25, notes: [name] }), setBid({ taxPercent: undefined })],
    setName: [setName(`Yard ${Math.floor(random() * 9)}`)],
    setUnits: [setUnits(site.units === 'ftin' ? 'metric' : 'ftin')],
    setCapacity: [setCapacity(isSo(0.2) ? undefined : { capM2: between(40, 90) })],
    setCrew: [setCrew({ hands: 2 + Math.floor(random() * 5), experience: 'steady', crews: 1, daysOff: [] })],
    setMix: [setMix({ minutesFromPlant: between(10, 50) })],
    setCalendar: [setCalendar({ plantHours: hours, noiseHours: [], weatherDays: Math.floor(random() * 4) })],
    setConditions: [setConditions({ ...conditions, highC: between(20, 35) })],
    setPlace: [setPlace({ latDeg: between(-89, 89), lonDeg: between(-180, 180) })],
    setCoordinates: [setCoordinates({ latDeg: between(-89, 89), lonDeg: between(-180, 180) })],
    setNorth: [setNorth(between(-720, 720))],
    setSetting: [setSetting('casterSpanStoryM', isSo(0.3) ? undefined : between(2.5, 3.5))],
    setPicture: [setPicture(picture, { kind: 'image/png', base64: 'iVBORw0KGgo=' })],
    scalePicture: [scalePicture(spot(), spot(), between(1, 20))],
    turnPicture: [turnPicture(spot(), between(-90, 90))],
    movePicture: [movePicture(spot(), spot())],
    fadePicture: [fadePicture(random())],
    removePicture: [removePicture],
    logTap: row(pours, ({ id }) => logTap(id, { atUtc, what: 'batched', load: 1, source: 'tap' }, start)),
    logReading: row(pours, ({ id }) =>
      logReading(id, 1 + Math.floor(random() * 3), { slumpMm: between(80, 150) }, start),
    ),
    changeTap: row(taps, ({ id }) => changeTap(id, { atUtc })),
    removeTap: row(taps, ({ id }) => removeTap(id)),
    setLoadReading: row(site.log, ({ id }) => setLoadReading(id, 1, { tempC: between(15, 35) })),
    setLogNotes: row(site.log, ({ id }) => setLogNotes(id, name)),
    setLearnedFrom: row(site.log, ({ id, leftOut = false }) => setLearnedFrom(id, leftOut)),
  }
}

/** What changes shapes is drawn more often than the rest. */
const shapes = [
  ...['moveVertex', 'moveVertex', 'deleteVertex', 'setCornerRadius', 'splitEdge', 'splitEdge', 'setEdgeRise'],
  ...[
    'setEdgeRadius',
    'setDimension',
    'setArc',
    'moveSelection',
    'turnSelection',
    'mirrorSelection',
    'deleteSelection',
  ],
]
/** A logged pour freezes its slab: most runs go without. */
const logs: ReadonlySet<string> = new Set(['logTap', 'logReading'])

export const randomCommand = (site: Site, random: Random): Command => {
  const drawn = drawCommands(site, random)
  const names = Object.keys(drawn)
  const pick = (list: readonly string[]) => list[Math.floor(random() * list.length)]!
  const name = random() < 0.45 ? pick(shapes) : pick(names)
  if (logs.has(name) && random() < 0.8) return nothing
  const found = drawn[name] ?? []
  return found[Math.floor(random() * found.length)] ?? nothing
}
