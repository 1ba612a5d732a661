import type { Session } from './session'

/** What was told of an edit goes with the edit: a step taken back or done again leaves no words behind. */
export function forgetNotice({ site, view }: Pick<Session, 'site' | 'view'>): void {
  site.subscribe(({ history }, { history: before }) => {
    const isStep = history !== null && history.steps === before?.steps && history.at !== before.at
    if (isStep && view.getState().notice !== null) view.setState({ notice: null })
  })
}
