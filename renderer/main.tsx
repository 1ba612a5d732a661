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
import { createRoot } from 'react-dom/client'
import { App } from './app/App'
import { emptySite } from './app/emptySite'
import { hearHost } from './app/hearHost'
import { createKeeper } from './app/keeper'
import { SessionContext } from './app/session'
import { connectHost } from './host/connectHost'
import { createMemoryHost } from './host/memoryHost'
import { createPlanStore } from './store/planStore'
import { createSiteStore } from './store/siteStore'
import { createViewStore } from './store/viewStore'
import { startPlanWorker } from './worker/startPlanWorker'

async function run(): Promise<void> {
  // A page that nobody serves, or that was opened without its key, still plans; it keeps nothing.
  const connected = await connectHost()
  const host = connected?.api ?? createMemoryHost('./')
  const start = await host.start({})
  if (!start.ok) throw new Error(`the host did not start: ${start.error.reason}`)
  const site = createSiteStore()
  const view = createViewStore()
  const plan = createPlanStore({
    siteStore: site,
    viewStore: view,
    today: () => start.value.today,
    startWorker: startPlanWorker,
    setTimer: (call, ms) => window.setTimeout(call, ms),
    clearTimer: timer => window.clearTimeout(timer as number),
  })
  const keeper = createKeeper(host, site, view, emptySite)
  if (connected !== null) hearHost(connected, keeper, site)
  createRoot(document.getElementById('root')!).render(
    <SessionContext value={{ host, start: start.value, site, view, plan, keeper }}>
      <App />
    </SessionContext>,
  )
}

void run()
