import type { Session } from './session'

/** The theme as it was last chosen on this computer; each choice is kept with the host. */
export function rememberTheme({ host, start, view }: Pick<Session, 'host' | 'start' | 'view'>): void {
  if (start.theme !== undefined) view.setState({ theme: start.theme })
  document.documentElement.dataset.theme = view.getState().theme
  view.subscribe(({ theme }, before) => {
    if (theme !== before.theme) void host.keepTheme({ theme })
  })
}
