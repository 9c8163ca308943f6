import type { SourceChoice } from '#contract/bench/source.ts'
import { Trouble, troubleFrom } from '#contract/errors.ts'
import { cableBack, cableOut } from './cableOut.ts'
import { type Connection, type Link, newSignal, nothingConnected } from './link.ts'
import { createSilenceWatch } from './silenceWatch.ts'
import { sourceFacts } from './sourceFacts.ts'

/**
 * Lets go of the device that is connected, and opens the chosen one. Rejects with the Trouble of opening it, `conflict` where it was
 * let go of meanwhile.
 */
export async function connectDevice(link: Link, choice: SourceChoice): Promise<void> {
  const { state, listener, clock } = link
  // Somebody else may connect one while this waits: two at once would both be heard
  while (state.connection !== null) await disconnectDevice(link)
  const source = link.openSource(choice, clock)
  const facts = sourceFacts(choice, source, link.preferences(), link.calibration())
  listener.opening(source, facts)
  const baudRate = choice.kind === 'serial' ? choice.baudRate : null
  const silence = createSilenceWatch(clock, facts.lineFormat, baudRate, listener.changed)
  const opened: Connection = { choice, source, facts, session: link.openSession(facts), silence }
  state.connection = opened
  state.status = 'opening'
  state.problem = null
  state.signal = newSignal
  listener.changed()
  try {
    await listenTo(link, opened)
  } catch (thrown) {
    silence.stop()
    if (state.connection === opened) {
      state.connection = null
      state.status = 'closed'
      state.problem = troubleFrom(thrown)
      listener.changed()
    }
    throw thrown
  }
  if (state.connection !== opened)
    throw new Trouble('conflict', 'The device was let go of before it was connected.', 'Connect it again.')
  if (state.status === 'opening') state.status = 'open'
  listener.connected(choice, source, facts)
  listener.changed()
}

/** What the open source tells. A session may be renewed meanwhile, so it is asked for each time. */
function listenTo(link: Link, opened: Connection): Promise<void> {
  const { state, listener } = link
  return opened.source.open({
    bytes(chunk, arrivalS) {
      opened.silence.bytes(chunk)
      opened.session.bytes(chunk, arrivalS)
    },
    lost: (trouble) => cableOut(link, opened, trouble),
    restored: () => cableBack(link, opened),
    ended() {
      state.status = 'closed'
      opened.session.stop()
      listener.changed()
    },
  })
}

/** Closes the device; a capture that runs ends as interrupted. */
export async function disconnectDevice({ state, listener }: Link): Promise<void> {
  const leaving = state.connection
  if (leaving === null) return
  await leaving.source.close()
  if (state.connection !== leaving) return
  state.renewalIsDue = false
  leaving.session.stop()
  leaving.silence.stop()
  Object.assign(state, nothingConnected(state.armed))
  listener.changed()
}
