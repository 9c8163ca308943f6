// Held by tests/shells/desktop/main.spec.ts.
import type { WebContents } from 'electron'
import { decideNavigation } from './decideNavigation.ts'
import type { Telling } from './tellings.ts'
import { leaveUnsaved, pageCameBack, pageGivenUp } from './tellings.ts'

export type WindowParts = {
  openExternal(address: string): void
  tell(telling: Telling): void
  /** Asks, and waits for the answer: the number of its button. */
  dialog: { showMessageBoxSync(question: Telling & { buttons: string[]; defaultId: number; cancelId: number }): number }
  /** Milliseconds, for how long ago the page stopped before. */
  now(): number
}

/** A page that stops twice within so many milliseconds is not loaded a third time: it would go on so. */
const againWithinMs = 10_000

/** Keeps a window on the page of this program, and brings the page back when it stops. */
export function guardWindow(webContents: WebContents, { openExternal, tell, dialog, now }: WindowParts): void {
  webContents.setWindowOpenHandler(({ url }) => {
    if (decideNavigation(url) === 'external') openExternal(url)
    return { action: 'deny' }
  })
  webContents.on('will-frame-navigate', (event) => {
    const decision = event.isMainFrame ? decideNavigation(event.url) : 'deny'
    if (decision !== 'stay') event.preventDefault()
    if (decision === 'external') openExternal(event.url)
  })
  webContents.on('will-attach-webview', (event) => event.preventDefault())

  // Electron itself asks nothing: without an answer from here a half-filled page could not be closed at all
  webContents.on('will-prevent-unload', (event) => {
    const buttons = ['Leave without saving', 'Stay here']
    if (dialog.showMessageBoxSync({ ...leaveUnsaved, buttons, defaultId: 1, cancelId: 1 }) === 0) event.preventDefault()
  })

  let stoppedAtMs = Number.NEGATIVE_INFINITY
  webContents.on('render-process-gone', (_event, { reason }) => {
    if (reason === 'clean-exit') return
    const again = now() - stoppedAtMs < againWithinMs
    stoppedAtMs = now()
    if (!again) webContents.reload()
    tell(again ? pageGivenUp(reason) : pageCameBack(reason))
  })
}
