/** Sites taken from the host: new, out of a file, or recovered. */
import { readSite } from '../../../core/document/readSite'
import { wordProblem } from '../../../core/problems/wordProblem'
import { printMeasures } from '../../../core/units/printMeasures'
import type { Site } from '../../../shared/document/site'
import type { HostAnswer, OpenedSite } from '../../../shared/host'
import { resetView } from '../../store/viewStore'
import { fileStem } from '../fileStem'
import type { KeeperDesk } from './desk'
import { type KeptState, nothing } from './keptState'

export interface Opening {
  /** Takes what the host opened; false where it is no site of ours, with the problems in the state. */
  take(answer: HostAnswer<OpenedSite>): boolean
  /** As `take`, once the host answers. */
  takeFrom(asked: Promise<HostAnswer<OpenedSite>>): Promise<boolean>
  /** As `take`, of work that no file holds yet. */
  takeRecovered(answer: HostAnswer<OpenedSite>): boolean
  startNew(name: string): Promise<void>
}

export function createOpening({ host, site, view, dialogs, emptySite, store }: KeeperDesk): Opening {
  const open = (document: Site, state: Partial<KeptState>) => {
    store.setState({ ...nothing, ...state, isOpening: store.getState().isOpening })
    resetView(view)
    site.open(document)
  }

  async function opening<T>(open: () => Promise<T>): Promise<T> {
    store.setState({ isOpening: true })
    try {
      return await open()
    } finally {
      store.setState({ isOpening: false })
    }
  }

  function takeAs(answer: HostAnswer<OpenedSite>, isFiled: boolean): boolean {
    if (!answer.ok) {
      if (answer.error.reason !== 'canceled') store.setState({ failure: answer.error, problems: [] })
      return false
    }
    const { docId, fileName, text, readOnly } = answer.value
    const read = readSite(text)
    if (!read.ok) {
      const print = printMeasures('ftin')
      store.setState({
        failure: null,
        problems: read.error.map(finding => wordProblem(finding, print)),
        problemsIn: fileName === undefined ? null : fileStem(fileName),
      })
      // The file is free again for whoever can read it; recovered work that cannot be read stays where it is.
      void host.close({ docId, keepRecovery: true })
      return false
    }
    open(read.value, {
      docId,
      fileName: fileName ?? null,
      kept: read.value,
      filed: isFiled ? read.value : null,
      readOnly: readOnly ?? null,
    })
    if (readOnly === 'openElsewhere')
      dialogs.setState({
        open: { kind: 'openElsewhere', name: fileName === undefined ? read.value.name : fileStem(fileName) },
      })
    return true
  }

  return {
    take: answer => takeAs(answer, true),
    takeFrom: asked => opening(async () => takeAs(await asked, true)),
    takeRecovered: answer => takeAs(answer, false),
    startNew: name =>
      opening(async () => {
        const answer = await host.newSite({ title: name })
        if (!answer.ok) {
          store.setState({ failure: answer.error })
          return
        }
        const document = emptySite(answer.value.siteId, name)
        open(document, { docId: answer.value.docId, filed: document })
      }),
  }
}
