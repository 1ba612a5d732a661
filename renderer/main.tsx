import '@fontsource-variable/atkinson-hyperlegible-next/wght.css'
import '@fontsource/zilla-slab/latin-600.css'
import '@fontsource/zilla-slab/latin-700.css'
import '@fontsource/barlow-semi-condensed/latin-500.css'
import '@fontsource/barlow-semi-condensed/latin-600.css'
import '@fontsource/barlow-semi-condensed/latin-700.css'
import './theme/tokens.css'
import './theme/base.css'
import './theme/frame.css'
import './theme/start.css'
import './theme/files.css'
import { createRoot } from 'react-dom/client'
import { App } from './app/App'
import { createDialogStore } from './app/dialogStore'
import { emptySite } from './app/emptySite'
import { forgetNotice } from './app/forgetNotice'
import { afterFrame, inNextFrame } from './app/frames'
import { guardLeaving } from './app/guardLeaving'
import { hearHost } from './app/hearHost'
import { hearKeys } from './app/hearKeys'
import { createKeeper } from './app/keeper'
import { rememberTheme } from './app/rememberTheme'
import { StandAlone } from './app/StandAlone'
import { type Session, SessionContext } from './app/session'
import { connectHost } from './host/connectHost'
import { createCalmPlan } from './store/calmPlan'
import { createPlanStore } from './store/planStore'
import { createSiteStore } from './store/siteStore'
import { createViewStore } from './store/viewStore'
import { startPlanWorker } from './worker/startPlanWorker'
// Last: it overrides what the parts bring with them.
import './theme/touch.css'

const root = createRoot(document.getElementById('root')!)

async function run(): Promise<void> {
  const connected = await connectHost()
  const start = await connected?.api.start({})
  if (!connected || !start?.ok) {
    root.render(<StandAlone />)
    return
  }
  const host = connected.api
  const site = createSiteStore()
  const view = createViewStore()
  const dialogs = createDialogStore()
  const setTimer = (call: () => void, ms: number) => window.setTimeout(call, ms)
  const plan = createPlanStore({
    siteStore: site,
    viewStore: view,
    today: () => start.value.today,
    startWorker: startPlanWorker,
    setTimer,
    clearTimer: timer => window.clearTimeout(timer as number),
    afterFrame,
  })
  const asksItself = start.value.host === 'desktop'
  const keeper = createKeeper({ host, asksItself, site, view, dialogs, emptySite })
  const openFile = async (): Promise<void> => {
    if (asksItself) {
      await keeper.takeFrom(host.openDialog({}))
      return
    }
    const files = await host.listFolder({})
    if (files.ok) dialogs.setState({ open: { kind: 'openFile', files: files.value } })
    else keeper.setState({ failure: files.error })
  }
  const session: Session = {
    host,
    start: start.value,
    site,
    view,
    plan,
    calmPlan: createCalmPlan(plan, site, { setTimer, afterFrame, inNextFrame }),
    keeper,
    dialogs,
    openFile: () => void openFile(),
  }
  hearHost(connected, session)
  hearKeys(session)
  if (!asksItself) guardLeaving(session)
  rememberTheme(session)
  forgetNotice(session)
  root.render(
    <SessionContext value={session}>
      <App />
    </SessionContext>,
  )
}

void run()
