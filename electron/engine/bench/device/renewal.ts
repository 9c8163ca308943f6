// Held by tests/engine/createEngine.spec.ts.
import { type Link, newSignal } from './link.ts'
import { sourceFacts } from './sourceFacts.ts'

/** The stream goes on under the preferences and the calibration of now, in a session of its own; after a capture that runs. */
export function renewSession(link: Link): void {
  const { state, listener } = link
  const { connection } = state
  if (connection === null) return
  state.renewalIsDue = state.capturing
  if (state.capturing) return
  connection.session.stop()
  state.signal = newSignal
  connection.facts = sourceFacts(connection.choice, connection.source, link.preferences(), link.calibration())
  connection.session = link.openSession(connection.facts)
  listener.changed()
}

/** Renews the session where something that it works with has become another one: the zero would be lost for nothing. */
export function renewIfChanged(link: Link): void {
  const { connection } = link.state
  if (connection === null) return
  const { settings, scaleFor } = connection.facts
  const after = sourceFacts(connection.choice, connection.source, link.preferences(), link.calibration())
  const unit = connection.session.readingUnit() ?? 'counts'
  const told = JSON.stringify([settings, scaleFor(unit)])
  if (told !== JSON.stringify([after.settings, after.scaleFor(unit)])) renewSession(link)
}
