import type { Quantity } from '../../shared/planJson'

/** True for a figure of the whole site that is added up pour by pour: concrete, loads, and what is bought by them. */
export const isPourTotal = ({ id }: Pick<Quantity, 'id'>): boolean =>
  /^total-(ordered|loads|(materials?|bulk)-.*)$/.test(id)
