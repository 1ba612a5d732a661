import { app, session, type WebContents } from 'electron'
import { isPageUrl } from './scheme'

/** Shuts everything a page could ask of the system beyond our own calls. */
export function guardSession(): void {
  const { defaultSession } = session
  defaultSession.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  defaultSession.setPermissionCheckHandler(() => false)
  defaultSession.setDevicePermissionHandler(() => false)
  defaultSession.setSpellCheckerEnabled(false)
  defaultSession.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !isAllowedUrl(url) }))
  defaultSession.on('will-download', event => event.preventDefault())
}

/** Keeps every page where it is: no other address, no new window, no page inside a page. */
export function guardContents(): void {
  app.on('web-contents-created', (_event, contents: WebContents) => {
    const stay = (event: { preventDefault(): void; url: string }) => {
      if (!isPageUrl(event.url)) event.preventDefault()
    }
    contents.on('will-navigate', stay)
    contents.on('will-redirect', stay)
    contents.on('will-frame-navigate', stay)
    contents.on('will-attach-webview', event => event.preventDefault())
    contents.setWindowOpenHandler(() => ({ action: 'deny' }))
  })
}

/** Our page, what it makes itself, and the developer tools. */
function isAllowedUrl(url: string): boolean {
  return isPageUrl(url) || /^(?:blob:slabwright:\/\/app\/|data:|devtools:\/\/)/.test(url)
}
