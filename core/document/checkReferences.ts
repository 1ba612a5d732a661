import type { Path } from '../../shared/document/path'
import type { Anchor } from '../../shared/document/pours'
import type { Site } from '../../shared/document/site'
import type { Slab } from '../../shared/document/slab'
import { onceFrozen } from '../../shared/onceFrozen'
import type { Finding } from '../../shared/problem'
import { editablePaths } from './commands/findPath'

/** What an id should have led to; worded by the door. */
type Target = 'edge' | 'corner' | 'ring' | 'finish' | 'slab' | 'joint' | 'pour' | 'log' | 'material' | 'picture'

interface Reference {
  readonly id: string
  readonly target: Target
  readonly field: string
  readonly among: ReadonlySet<string>
}

type Ids = ReadonlySet<string>

const edgeIds = (path: Path): readonly string[] => path.edges.map(edge => edge.id)
const vertexIds = (path: Path): readonly string[] => path.vertices.map(vertex => vertex.id)
const slabRings = (slab: Slab): readonly Path[] => [slab.outline, ...slab.openings.map(opening => opening.path)]
const idsOf = (rows: readonly { readonly id: string }[] | undefined): Ids => new Set(rows?.map(row => row.id))

const list = (ids: readonly string[], target: Target, field: string, among: Ids): readonly Reference[] =>
  ids.map((id, i) => ({ id, target, field: `${field}/${i}`, among }))

const borderReferences = (slab: Slab, border: Slab['borders'][number], at: string): readonly Reference[] => {
  const rings = slabRings(slab)
  const ring = rings.find(candidate => candidate.id === border.pathId)
  const path: Reference = { id: border.pathId, target: 'ring', field: `${at}/pathId`, among: idsOf(rings) }
  if (ring === undefined || border.edges === 'all') return [path]
  return [path, ...list(border.edges, 'edge', `${at}/edges`, new Set(edgeIds(ring)))]
}

const slabReferences = (slab: Slab, finishes: Ids, at: string): readonly Reference[] => {
  const edges = new Set(slabRings(slab).flatMap(edgeIds))
  const finished = (rows: readonly { readonly finishId: string }[], field: string) =>
    rows.map(
      (row, i): Reference => ({ id: row.finishId, target: 'finish', field: `${field}/${i}/finishId`, among: finishes }),
    )
  return [
    { id: slab.finishId, target: 'finish', field: `${at}/finishId`, among: finishes },
    ...slab.thickened.flatMap((part, i) => list(part.edges, 'edge', `${at}/thickened/${i}/edges`, edges)),
    ...slab.borders.flatMap((border, i) => borderReferences(slab, border, `${at}/borders/${i}`)),
    ...finished(slab.borders, `${at}/borders`),
    ...finished(slab.bands, `${at}/bands`),
    ...finished(slab.insets, `${at}/insets`),
    ...slab.steps.map(
      (steps, i): Reference => ({ id: steps.edgeId, target: 'edge', field: `${at}/steps/${i}/edgeId`, among: edges }),
    ),
    ...list(slab.againstExisting, 'edge', `${at}/againstExisting`, edges),
  ]
}

const casterReferences = (caster: Site['casters'][number], at: string): readonly Reference[] => {
  if (caster.kind !== 'building' || caster.roof.form === 'flat' || caster.roof.ridgeAlongEdge === undefined) return []
  const among = new Set(edgeIds(caster.footprint))
  return [{ id: caster.roof.ridgeAlongEdge, target: 'edge', field: `${at}/roof/ridgeAlongEdge`, among }]
}

const castersReferences = onceFrozen((casters: Site['casters']): readonly Reference[] =>
  casters.flatMap((caster, i) => casterReferences(caster, `/casters/${i}`)),
)

/** What a joint may end on along the rings of one slab. */
interface Grips {
  readonly corners: Ids
  /** A rounded corner's arc is named by its vertex and a tilde: `v12~`. */
  readonly edges: Ids
}

const gripsOf = (slab: Slab): Grips => {
  const corners = slabRings(slab).flatMap(vertexIds)
  return {
    corners: new Set(corners),
    edges: new Set([...slabRings(slab).flatMap(edgeIds), ...corners.map(id => `${id}~`)]),
  }
}

const anchorReferences = (anchor: Anchor, grips: Grips | undefined, joints: Ids, at: string): readonly Reference[] => {
  if (anchor.on === 'free') return []
  if (anchor.on === 'joint') return [{ id: anchor.jointId, target: 'joint', field: `${at}/jointId`, among: joints }]
  if (grips === undefined) return []
  return anchor.on === 'vertex'
    ? [{ id: anchor.vertexId, target: 'corner', field: `${at}/vertexId`, among: grips.corners }]
    : [{ id: anchor.edgeId, target: 'edge', field: `${at}/edgeId`, among: grips.edges }]
}

const tapeReferences = (site: Site): readonly Reference[] => {
  if (!site.tapes) return []
  const paths = editablePaths(site)
  const corners = new Set(paths.flatMap(vertexIds))
  const edges = new Set([...paths.flatMap(edgeIds), ...[...corners].map(id => `${id}~`)])
  return site.tapes.flatMap(({ ends }, i) =>
    ends.flatMap(({ on }, k): readonly Reference[] =>
      on.on === 'vertex'
        ? [{ id: on.vertexId, target: 'corner', field: `/tapes/${i}/ends/${k}/on/vertexId`, among: corners }]
        : on.on === 'edge'
          ? [{ id: on.edgeId, target: 'edge', field: `/tapes/${i}/ends/${k}/on/edgeId`, among: edges }]
          : [],
    ),
  )
}

const pourReferences = (site: Site, slabs: Ids): readonly Reference[] => {
  const grips = new Map(site.slabs.map(slab => [slab.id, gripsOf(slab)]))
  const log = idsOf(site.log)
  const joints = idsOf(site.accepted.flatMap(part => part.joints))
  const wishes = site.wishes.flatMap((wish, i): readonly Reference[] => [
    { id: wish.slabId, target: 'slab', field: `/wishes/${i}/slabId`, among: slabs },
    ...(wish.kind === 'required'
      ? wish.line.flatMap((end, k) =>
          anchorReferences(end.anchor, grips.get(wish.slabId), joints, `/wishes/${i}/line/${k}/anchor`),
        )
      : []),
  ])
  const ownJoints = site.accepted.map(part => idsOf(part.joints))
  const accepted = site.accepted.flatMap((part, i): readonly Reference[] => [
    { id: part.slabId, target: 'slab', field: `/accepted/${i}/slabId`, among: slabs },
    ...part.joints.flatMap((joint, k) =>
      joint.ends.flatMap((end, e) =>
        anchorReferences(
          end.anchor,
          grips.get(part.slabId),
          ownJoints[i] ?? joints,
          `/accepted/${i}/joints/${k}/ends/${e}/anchor`,
        ),
      ),
    ),
    ...part.pours.flatMap(({ poured }, k): readonly Reference[] =>
      poured === undefined
        ? []
        : [{ id: poured.logId, target: 'log', field: `/accepted/${i}/pours/${k}/poured/logId`, among: log }],
    ),
  ])
  return [...wishes, ...accepted]
}

const bookReferences = (site: Site): readonly Reference[] => {
  const materials = idsOf(site.materials)
  const pours = idsOf(site.accepted.flatMap(part => part.pours))
  const used = (rows: readonly { readonly materialId: string }[] | undefined, at: string) =>
    (rows ?? []).map(
      (row, i): Reference => ({
        id: row.materialId,
        target: 'material',
        field: `${at}/${i}/materialId`,
        among: materials,
      }),
    )
  const finishes = idsOf(site.finishes)
  return [
    ...(site.prices ?? []).flatMap(({ finishId }, i): readonly Reference[] =>
      finishId === undefined
        ? []
        : [{ id: finishId, target: 'finish', field: `/prices/${i}/finishId`, among: finishes }],
    ),
    ...used(site.stock, '/stock'),
    ...(site.log ?? []).flatMap((entry, i): readonly Reference[] => [
      { id: entry.pourId, target: 'pour', field: `/log/${i}/pourId`, among: pours },
      ...used(entry.used, `/log/${i}/used`),
    ]),
  ]
}

const references = (site: Site): readonly Reference[] => {
  const slabs = idsOf(site.slabs)
  const finishes = idsOf(site.finishes)
  const pictures = new Set(Object.keys(site.assets ?? {}))
  const { picture } = site.place
  return [
    ...(picture === undefined
      ? []
      : [{ id: picture.assetId, target: 'picture', field: '/place/picture/assetId', among: pictures } as const]),
    ...site.slabs.flatMap((slab, i) => slabReferences(slab, finishes, `/slabs/${i}`)),
    ...castersReferences(site.casters),
    ...site.points.map(
      (point, i): Reference => ({ id: point.slabId, target: 'slab', field: `/points/${i}/slabId`, among: slabs }),
    ),
    ...pourReferences(site, slabs),
    ...tapeReferences(site),
    ...bookReferences(site),
  ]
}

/** Ids that lead nowhere. */
export const checkReferences = (site: Site): readonly Finding[] =>
  references(site)
    .filter(({ id, among }) => !among.has(id))
    .map(({ id, target, field }) => ({ code: 'danglingId', severity: 'stop', values: { id, target }, field }))
