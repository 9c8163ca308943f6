import './zodWithoutEval.ts'
import 'uplot/dist/uPlot.min.css'
import './theme/typefaces.css'
import './theme/tokens.css'
import './theme/base.css'
import './widgets/buttons.css'
import './widgets/words.css'
import './widgets/fields.css'
import './widgets/search.css'
import './widgets/choice.css'
import './widgets/switch.css'
import './widgets/dialogs/dialog.css'
import './widgets/notice.css'
import './widgets/tables/longTable.css'
import './widgets/facts.css'
import './widgets/tables/dataTable.css'
import './widgets/pages.css'
import './frame/frame.css'
import { createRoot } from 'react-dom/client'
import type { Preferences } from '#contract/settings/settings.ts'
import { App } from './frame/App.tsx'
import { connectHost } from './host/connectHost.ts'
import { HostContext } from './host/hostContext.ts'
import type { Store } from './host/store.ts'
import { applyTheme } from './theme/applyTheme.ts'
import { typefacesLoaded } from './theme/typefacesLoaded.ts'
import { keepFocus } from './widgets/focus/keepFocus.ts'
import { refuseUnavailable } from './widgets/focus/unavailable.ts'
import { refuseStrayFiles } from './widgets/forms/refuseStrayFiles.ts'
import { isAnythingUnsaved } from './widgets/forms/unsaved.ts'

const host = connectHost()
showTheme(host.preferences)
const root = document.getElementById('root')
if (root === null) throw new TypeError('index.html has no element with the id "root"')
const page = createRoot(root)
keepFocus()
refuseUnavailable()
refuseStrayFiles()
addEventListener('beforeunload', (event) => {
  if (isAnythingUnsaved('window')) event.preventDefault()
})
await typefacesLoaded(document.fonts)
page.render(
  <HostContext value={host}>
    <App />
  </HostContext>,
)

/** Keeps the theme that the person chose on the page; the system's until the program has said which that is. */
function showTheme(preferences: Store<Preferences | null>): void {
  let shown: Preferences['theme'] = 'system'
  let end = applyTheme(shown)
  preferences.subscribe(() => {
    const chosen = preferences.get()?.theme ?? 'system'
    if (chosen === shown) return
    end()
    shown = chosen
    end = applyTheme(shown)
  })
}
