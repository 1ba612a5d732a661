/** The theme's colors for the canvas, which knows no style sheets. */
const names = [
  'paper',
  'grid',
  'ink',
  'ink-2',
  'ink-3',
  'raised',
  'edge',
  'chalk',
  'chalk-wash',
  'on-chalk',
  'paint',
  'check',
  'stop',
  'slab',
  'slab-joint',
  'border-fill',
  'border-joint',
  'outline',
  'opening',
  'header',
  'header-fill',
  'joint-contraction',
  'joint-isolation',
  'building',
  'building-2',
  'building-ink',
  'tree',
  'tree-fill',
  'wall',
  'cover',
  'nogo',
  'truck',
  'shade',
  'shade-op',
  'shade-line',
  'sh-1',
  'sh-2',
  'sh-3',
  'sh-4',
  'sh-5',
  'sh-6',
  'sh-7',
  'sh-ink-dark',
  'sh-ink-light',
  'p1',
  'p1-ink',
  'p2',
  'p2-ink',
  'p3',
  'p3-ink',
  'p4',
  'p4-ink',
  'lw-scale',
  't-scale',
] as const

export type Inks = Readonly<Record<(typeof names)[number], string>> & {
  /** Line weights are multiplied by this, outdoors. */
  readonly weight: number
  readonly letterScale: number
}

export function readInks(root: Element): Inks {
  const style = getComputedStyle(root)
  const colors = Object.fromEntries(names.map(name => [name, style.getPropertyValue(`--${name}`).trim()])) as Record<
    (typeof names)[number],
    string
  >
  return { ...colors, weight: Number(colors['lw-scale']) || 1, letterScale: Number(colors['t-scale']) || 1 }
}
