import { type IpcMainInvokeEvent, ipcMain } from 'electron'
import { callChannel, hostMethodNames } from '../../shared/host'
import { answerCall } from '../host/answerCall'
import { isPageUrl } from './scheme'
import type { SiteWindow } from './siteWindow'

/** One channel for each method; only the top frame of our page in a window of ours is answered. */
export function answerCalls(windows: ReadonlySet<SiteWindow>): void {
  for (const name of hostMethodNames) {
    ipcMain.handle(callChannel(name), async (event, ...given: unknown[]) => {
      const window = senderOf(event, windows)
      if (window === null) throw new Error('refused')
      const answer = given.length === 1 ? await answerCall(window.api, name, given[0]) : null
      if (answer === null) throw new Error('not what this call takes')
      return answer
    })
  }
}

function senderOf({ sender, senderFrame }: IpcMainInvokeEvent, windows: ReadonlySet<SiteWindow>): SiteWindow | null {
  if (senderFrame === null || senderFrame.parent !== null || !isPageUrl(senderFrame.url)) return null
  return [...windows].find(({ contents }) => contents === sender) ?? null
}
