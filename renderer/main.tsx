import './zodWithoutEval.ts'
import 'uplot/dist/uPlot.min.css'
import './theme/tokens.css'
import './theme/base.css'
import './widgets/buttons.css'
import './widgets/words.css'
import './widgets/fields.css'
import './widgets/choice.css'
import './widgets/switch.css'
import './widgets/dialogs/dialog.css'
import './widgets/notice.css'
import './widgets/tables/longTable.css'
import './widgets/facts.css'
import './widgets/tables/dataTable.css'
import './frame/frame.css'
import { createRoot } from 'react-dom/client'
import { App } from './frame/App.tsx'
import { connectHost } from './host/connectHost.ts'
import { HostContext } from './host/hostContext.ts'
import { keepLiveHistory, LiveHistoryContext } from './parts/bench/liveHistory.ts'
import { applyTheme } from './theme/applyTheme.ts'

applyTheme('system')
const host = connectHost()
const history = keepLiveHistory(host)
const root = document.getElementById('root')
if (root === null) throw new TypeError('index.html has no element with the id "root"')
createRoot(root).render(
  <HostContext value={host}>
    <LiveHistoryContext value={history}>
      <App />
    </LiveHistoryContext>
  </HostContext>,
)
