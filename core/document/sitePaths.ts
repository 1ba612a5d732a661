import type { Path } from '../../shared/document/path'
import type { Site } from '../../shared/document/site'
import { onceFrozen } from '../../shared/onceFrozen'

export interface SitePath {
  readonly path: Path
  /** JSON pointer. */
  readonly field: string
  readonly mayBeOpen: boolean
}

const named = (paths: readonly Path[] | undefined, field: string): readonly SitePath[] =>
  (paths ?? []).map((path, i) => ({ path, field: `${field}/${i}`, mayBeOpen: false }))

const slabPaths = ({ outline, openings, bands, insets }: Site['slabs'][number], at: string): readonly SitePath[] => [
  { path: outline, field: `${at}/outline`, mayBeOpen: false },
  ...openings.map(({ path }, i) => ({ path, field: `${at}/openings/${i}/path`, mayBeOpen: false })),
  ...bands.map(({ line }, i) => ({ path: line, field: `${at}/bands/${i}/line`, mayBeOpen: true })),
  ...insets.map(({ path }, i) => ({ path, field: `${at}/insets/${i}/path`, mayBeOpen: false })),
]

const casterPaths = (caster: Site['casters'][number], at: string): readonly SitePath[] => {
  if (caster.kind === 'cover') return [{ path: caster.outline, field: `${at}/outline`, mayBeOpen: false }]
  if (caster.kind !== 'building') return []
  const footprint = { path: caster.footprint, field: `${at}/footprint`, mayBeOpen: false }
  return [footprint, ...named(caster.courtyards, `${at}/courtyards`)]
}

const pouredPaths = ({ poured }: Site['accepted'][number]['pours'][number], at: string): readonly SitePath[] =>
  poured === undefined
    ? []
    : [
        { path: poured.outline, field: `${at}/poured/outline`, mayBeOpen: false },
        ...named(poured.holes, `${at}/poured/holes`),
      ]

const castersPaths = onceFrozen((casters: Site['casters']): readonly SitePath[] =>
  casters.flatMap((caster, i) => casterPaths(caster, `/casters/${i}`)),
)

/** Every path of a site, in document order. */
export const sitePaths = onceFrozen((site: Site): readonly SitePath[] => [
  ...site.slabs.flatMap((slab, i) => slabPaths(slab, `/slabs/${i}`)),
  ...castersPaths(site.casters),
  ...named(site.access?.noGo, '/access/noGo'),
  ...site.wishes.flatMap((wish, i) =>
    wish.kind === 'forbiddenArea' ? [{ path: wish.path, field: `/wishes/${i}/path`, mayBeOpen: false }] : [],
  ),
  ...site.accepted.flatMap((part, i) =>
    part.pours.flatMap((pour, k) => pouredPaths(pour, `/accepted/${i}/pours/${k}`)),
  ),
])
