import { protocol } from 'electron'
import type { pageFiles } from '../page/pageFiles'

const schemeName = 'slabwright'
export const pageOrigin = `${schemeName}://app`

/** Must run before the app is ready: the scheme is one like https, for fetch, workers and modules. */
export function claimScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: schemeName, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ])
}

/** Answers the scheme with the files of the page and nothing else. */
export function serveScheme(page: ReturnType<typeof pageFiles>): void {
  protocol.handle(schemeName, request => {
    const { host, pathname, search } = new URL(request.url)
    const isOurs = host === 'app' && search === '' && request.method === 'GET'
    const { status, headers, body } = page.answer(isOurs ? pathname : '')
    return new Response(new Uint8Array(body), { status, headers })
  })
}

/** Whether an address is one of our page. */
export function isPageUrl(address: string): boolean {
  return address === pageOrigin || address.startsWith(`${pageOrigin}/`)
}
