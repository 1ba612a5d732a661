import type { Opening } from '../../../shared/document/slab'

/** What the client sees in an opening: water, planting, a grate, stone; told by its name as well. Own choice. */
export const openingFills: Readonly<Record<Opening['kind'], string>> = {
  pool: '#BFD9DC',
  planter: '#C3CCA8',
  drain: '#E4E2DC',
  column: '#D5D0C6',
  other: '#F4F2E8',
}
