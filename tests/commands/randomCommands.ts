/** Commands drawn at random for a site: what a pair of hands might do next. */
import { addNoGo, addSpot, addWay } from '../../core/document/commands/addAccess'
import { addBuilding, addCover, addTree, addWall } from '../../core/document/commands/addCaster'
import { addFurnishing, addNote, addTape, setTapeMeasured } from '../../core/document/commands/addShown'
import { addSlab } from '../../core/document/commands/addSlab'
import { addMarkedPoint, addWish } from '../../core/document/commands/addWish'
import { changeSlab } from '../../core/document/commands/changeEntity'
import { copySelection } from '../../core/document/commands/copySelection'
import { deleteSelection } from '../../core/document/commands/deleteSelection'
import { deleteVertex } from '../../core/document/commands/deleteVertex'
import type { Command } from '../../core/document/commands/editSite'
import { editablePaths } from '../../core/document/commands/findPath'
import { lineUp } from '../../core/document/commands/lineUp'
import { mirrorSelection, moveSelection, nudge, turnSelection } from '../../core/document/commands/moveSelection'
import { moveVertex } from '../../core/document/commands/moveVertex'
import { setCornerRadius } from '../../core/document/commands/setCornerRadius'
import { setDimension } from '../../core/document/commands/setDimension'
import { setEdgeRadius, setEdgeRise } from '../../core/document/commands/setEdgeRise'
import { setNorth } from '../../core/document/commands/setSite'
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
  setThickened,
} from '../../core/document/commands/slabParts'
import { splitEdge } from '../../core/document/commands/splitEdge'
import type { Site } from '../../shared/document/site'

export type Random = () => number

const nothing: Command = site => ({ ok: true, value: site, findings: [], made: [] })

export const randomCommand = (site: Site, random: Random): Command => {
  const one = <T>(list: readonly T[]): T | undefined => list[Math.floor(random() * list.length)]
  const between = (a: number, b: number) => a + random() * (b - a)
  const spot = () => [between(-20, 30), between(-20, 30)] as const
  const paths = editablePaths(site)
  const path = one(paths)
  const vertex = path && one(path.vertices)
  const edge = path && one(path.edges)
  const slab = one(site.slabs)
  const entities = siteEntities(site).map(({ row }) => row.id)
  const chosen = Array.from({ length: 1 + Math.floor(random() * 3) }, () => one(entities) ?? '')
  const finishId = site.finishes[0]!.id
  const edges = slab?.outline.edges.map(({ id }) => id) ?? []
  const some = edges.filter(() => random() < 0.5)
  const shape = {
    kind: 'rectangle',
    at: spot(),
    widthM: between(0.3, 4),
    depthM: between(0.3, 4),
    turnDeg: between(0, 360),
  } as const
  const circle = { kind: 'circle', center: spot(), radiusM: between(0.2, 2) } as const
  const placed = one(['withField', 'before', 'after', 'sawnLater'] as const)!
  const near = vertex && ([vertex.at[0] + between(-2, 2), vertex.at[1] + between(-2, 2)] as const)
  const onVertex: readonly Command[] =
    vertex && near
      ? [
          moveVertex(vertex.id, near),
          moveVertex(vertex.id, near),
          moveVertex(vertex.id, spot()),
          deleteVertex(vertex.id),
          setCornerRadius(vertex.id, random() < 0.3 ? undefined : between(0.1, 2)),
          moveSelection([vertex.id], spot()),
          deleteSelection([vertex.id]),
        ]
      : []
  const onEdge: readonly Command[] = edge
    ? [
        splitEdge(edge.id, between(0.1, 0.9)),
        splitEdge(edge.id, between(0.1, 0.9)),
        setEdgeRise(edge.id, random() < 0.4 ? undefined : between(-2, 2)),
        setEdgeRadius(edge.id, between(1, 20), { bulges: random() < 0.5 ? 'left' : 'right' }),
        setDimension(edge.id, between(0.5, 15), {
          moves: one(['start', 'end', 'both'] as const)!,
          with: one(['corner', 'side'] as const)!,
        }),
        moveSelection([edge.id], [between(-1, 1), between(-1, 1)]),
      ]
    : []
  const onSlab: readonly Command[] = slab
    ? [
        addOpening(slab.id, { shape: random() < 0.5 ? shape : circle, kind: 'planter' }),
        addBorder(slab.id, { pathId: slab.outline.id, edges: some, widthM: between(0.1, 0.5), finishId, placed }),
        addBand(slab.id, { line: { corners: [{ at: spot() }, { at: spot() }] }, widthM: 0.3, finishId, placed }),
        addInset(slab.id, { shape, finishId, placed: 'withField' }),
        addSteps(slab.id, { edgeId: one(edges)!, fromT: random(), widthM: 1, risers: 2, riserM: 0.15, treadM: 0.3 }),
        addObstacle(slab.id, { kind: 'post', at: spot() }),
        setThickened(slab.id, some, random() < 0.3 ? null : { depthM: 0.2, widthM: 0.3 }),
        setAgainstExisting(slab.id, some, random() < 0.6),
        restackBorder(slab.id, one(slab.borders)?.id ?? '', 0),
        addWish(slab.id, { kind: 'forbiddenArea', shape }),
        addWish(slab.id, {
          kind: 'required',
          line: [
            { anchor: { on: 'edge', edgeId: one(edges)!, t: random() }, last: spot() },
            { anchor: { on: 'vertex', vertexId: slab.outline.vertices[0]!.id }, last: slab.outline.vertices[0]!.at },
          ],
        }),
        addMarkedPoint(slab.id, 'Door', spot()),
        changeSlab(slab.id, { thicknessM: between(0.1, 0.2) }),
        moveSelection([slab.id], spot()),
        turnSelection([slab.id], spot(), between(0, 360)),
        mirrorSelection([slab.id], spot(), spot()),
      ]
    : []
  const all: readonly Command[] = [
    ...onVertex,
    ...onVertex,
    ...onEdge,
    ...onEdge,
    ...onSlab,
    moveSelection(chosen, spot()),
    turnSelection(chosen, spot(), between(-180, 180)),
    mirrorSelection(chosen, spot(), spot()),
    copySelection(chosen, spot()),
    deleteSelection(chosen),
    lineUp(chosen, one(['left', 'top', 'middleUp'] as const)!),
    nudge(chosen, 'left', 0.0254),
    setNorth(between(-720, 720)),
    addSlab({ outline: random() < 0.5 ? shape : circle, name: 'More' }),
    addBuilding({
      name: 'Shed',
      footprint: shape,
      height: { stories: 1 },
      roof: { form: 'gable', risePer12: 4, alongEdge: 1 },
    }),
    addWall({ name: 'Fence', line: [spot(), spot()], heightM: 1.8 }),
    addTree({
      name: 'Oak',
      at: spot(),
      heightM: 9,
      trunkHeightM: 2,
      crownRadiusM: 3,
      density: 'open',
      leaves: 'evergreen',
    }),
    addCover({ name: 'Shade', outline: shape, undersideAboveGroundM: 2.5, depthM: 0.1, light: 'half' }),
    addSpot(one(['truck', 'pump', 'washout'] as const)!, spot()),
    addNoGo(shape),
    addWay({ at: spot(), widthM: 1, open: [] }),
    addFurnishing(one(['chair', 'roundTable', 'car'] as const)!, spot(), between(0, 360)),
    addNote(spot(), 'Gate'),
    addTape(vertex?.at ?? spot(), one(paths)?.vertices[0]?.at ?? spot()),
    addTape(vertex?.at ?? spot(), spot()),
    ...(site.tapes ?? []).map(({ id }) => setTapeMeasured(id, random() < 0.5 ? undefined : between(1, 9))),
  ]
  return one(all) ?? nothing
}
