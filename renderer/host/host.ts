import type { HostApi, HostEvent } from '../../shared/host'

/** The program around the page, whichever it is. */
export interface Host {
  readonly api: HostApi
  /** Returns what ends the listening. */
  listen(hear: (event: HostEvent) => void): () => void
}
