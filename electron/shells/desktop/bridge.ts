import { type EventName, events } from '#contract/events.ts'
import type { Reply } from '#contract/wire/carrier.ts'
import type { Engine } from '#engine/core/engine.ts'
import { callChannel, eventChannel } from './channels.ts'
import type { EventReceiver, InvokeEvent, MainIpc } from './electronTypes.ts'
import { isOwnPage } from './pageAddress.ts'
import { startAgain } from './tellings.ts'

export type BridgeParts = {
  ipc: MainIpc
  dispatch(name: unknown, input: unknown): Promise<Reply>
  subscribe: Engine['subscribe']
  /** The windows that are open now. */
  receivers(): readonly EventReceiver[]
}

/** Joins Electron's IPC to the dispatcher, and every event of the engine to every window. The returned function ends the events. */
export function connectBridge({ ipc, dispatch, subscribe, receivers }: BridgeParts): () => void {
  ipc.handle(callChannel, async (event, name, input) => (isOwnSender(event) ? dispatch(name, input) : refusal))
  const ends = (Object.keys(events) as EventName[]).map((name) =>
    subscribe(name, (payload) => {
      for (const receiver of receivers()) if (!receiver.isDestroyed()) receiver.send(eventChannel, name, payload)
    }),
  )
  return () => {
    for (const end of ends) end()
  }
}

/** Only the top frame of our own page may ask; a frame inside it, or a frame that is gone, may not. */
export function isOwnSender({ senderFrame }: InvokeEvent): boolean {
  return senderFrame !== null && senderFrame.parent === null && isOwnPage(senderFrame.url)
}

const refusal: Reply = {
  ok: false,
  error: {
    code: 'denied',
    message: 'The question did not come from the page of this program.',
    hint: startAgain,
  },
}
