import { app, session, type WebContents } from 'electron'
import { isPageUrl } from './scheme'

/** What was copied in one window is pasted into another; nothing else of the system is asked for. */
const granted: ReadonlySet<string> = new Set(['clipboard-read', 'clipboard-sanitized-write'])

/** Only the page itself, never a frame within it. */
const isGranted = (permission: string, url: string | undefined, isMainFrame: boolean): boolean =>
  granted.has(permission) && isMainFrame && url !== undefined && isPageUrl(url)

/** Shuts everything a page could ask of the system beyond our own calls, but for the clipboard. */
export function guardSession(): void {
  const { defaultSession } = session
  defaultSession.setPermissionRequestHandler((_contents, permission, answer, { requestingUrl, isMainFrame }) =>
    answer(isGranted(permission, requestingUrl, isMainFrame)),
  )
  defaultSession.setPermissionCheckHandler((_contents, permission, origin, { isMainFrame }) =>
    isGranted(permission, origin, isMainFrame),
  )
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
