import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Camera } from './camera'

/**
 * Where one plan is looked at from; null until its window has a size. Kept outside the components: while a hand moves
 * the plan its canvases are painted again and hardly anything of the page is asked anew.
 */
export type Eye = StoreApi<Camera | null>

export const createEye = (): Eye => createStore<Camera | null>(() => null)
