// Held by tests/shells/desktop/main.spec.ts.
import type { App } from 'electron'

/** A quit waits until a running capture is on disk; `giveUp` is told when that fails. */
export function closeBeforeQuitting(app: App, close: () => Promise<void>, giveUp: (thrown: unknown) => void): void {
  let closing = false
  app.on('before-quit', (event) => {
    event.preventDefault()
    if (!closing) close().then(() => app.exit(0), giveUp)
    closing = true
  })
}
