import { browserHost } from './browserHost'
import { type DesktopBridge, desktopHost } from './desktopHost'
import type { Host } from './host'

declare global {
  interface Window {
    /** Put there by the desktop window before the page runs. */
    readonly slabwright?: DesktopBridge
  }
}

/** The desktop window where the page runs in one, else the loopback host it came from; null where that refuses. */
export async function connectHost(): Promise<Host | null> {
  return window.slabwright === undefined ? browserHost() : desktopHost(window.slabwright)
}
