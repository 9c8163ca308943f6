import type { BenchState } from '#contract/bench/bench.ts'
import type { TroubleMessage } from '#contract/errors.ts'
import { Trouble, troubleFrom } from '#contract/errors.ts'
import type { OutputOf } from '#contract/procedures.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import { type Carrier, type Client, createClient } from '#contract/wire/carrier.ts'
import { wrongAtOpening } from '#words/keeping/openingWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { troubleIn } from '#words/units/sentenceIn.ts'
import { type Changes, createChanges } from './changes.ts'
import { createStore, type Store } from './store.ts'

/** refused: the program is there and does not let this page in. */
export type HostLink = 'connecting' | 'connected' | 'lost' | 'refused'

/** Everything a page needs of the host: a client, and the few values that every page shows, kept up to date. */
export type Host = {
  client: Client
  link: Store<HostLink>
  info: Store<OutputOf<'app.info'> | null>
  bench: Store<BenchState | null>
  preferences: Store<Preferences | null>
  /** The newest trouble that no call was waiting for. */
  trouble: Store<TroubleMessage | null>
  changes: Changes
}

/** A carrier that may go away and come back says so here, and why it was refused. */
export type LinkWatch = (change: (link: HostLink, because?: TroubleMessage) => void) => void

const otherArchive: TroubleMessage = {
  code: 'conflict',
  message:
    'Another archive was opened. What this page shows belongs to the one before; nothing more is done from here.',
  hint: 'Load the page again.',
}

/**
 * Joins a carrier: subscribes first, then reads the present state, and reads it again after every reconnection. Once another
 * archive is open than the one that the page shows, nothing is asked any more, since a number would stand for another record
 * there; `leave` is called then. A page that opened it itself loads itself again, or cannot, where the person stays.
 */
export function joinHost(carrier: Carrier, watchLink: LinkWatch, leave: () => void = () => {}): Host {
  const trouble = createStore<TroubleMessage | null>(null)
  const wired = createClient(carrier, (name, error) =>
    trouble.set({
      code: 'internal',
      message: `The program sent "${name}" in a form that this page does not know: ${error.issues[0]?.message ?? ''}`,
      hint: 'Reload the page; if it stays, page and program differ in version.',
    }),
  )
  const preferences = createStore<Preferences | null>(null)
  const inUnits = (message: TroubleMessage) => troubleIn(message, quantitiesIn(preferences.get()?.units ?? 'SI'))
  let archive: 'shown' | 'switching' | 'another' = 'shown'
  const client: Client = {
    ...wired,
    async call(name, input) {
      if (archive === 'another') throw new Trouble(otherArchive.code, otherArchive.message, otherArchive.hint)
      if (name === 'archive.switch') archive = 'switching'
      try {
        const output = await wired.call(name, input)
        if (name === 'archive.switch') archive = 'another'
        return output
      } catch (thrown) {
        if (name === 'archive.switch') archive = 'shown'
        const { code, message, hint } = inUnits(troubleFrom(thrown))
        throw new Trouble(code, message, hint)
      }
    },
  }
  const host: Host = {
    client,
    link: createStore<HostLink>('connecting'),
    info: createStore<OutputOf<'app.info'> | null>(null),
    bench: createStore<BenchState | null>(null),
    preferences,
    trouble,
    changes: createChanges(),
  }
  client.on('bench.state', (state) => host.bench.set(state))
  client.on('preferences.changed', (preferences) => host.preferences.set(preferences))
  client.on('trouble', (message) => trouble.set(inUnits(message)))
  client.on('records.changed', ({ topics }) => host.changes.tell(topics))

  function archiveSwitched(): void {
    if (archive !== 'shown') return
    archive = 'another'
    trouble.set(otherArchive)
    host.link.set('refused')
    leave()
  }
  client.on('archive.switched', archiveSwitched)

  async function readAll(): Promise<void> {
    try {
      // Each is set as it comes: an event that follows the answer is newer.
      const info = await client.call('app.info', {})
      const before = host.info.get()
      // It was switched while this page was not connected.
      if (before !== null && before.archive.path !== info.archive.path) return archiveSwitched()
      host.info.set(info)
      host.preferences.set(info.preferences)
      const said = wrongAtOpening(info)
      if (said !== null) trouble.set(inUnits(said))
      host.bench.set(await client.call('bench.state', {}))
      host.changes.tell('everything')
      host.link.set('connected')
    } catch (thrown) {
      trouble.set(troubleFrom(thrown))
    }
  }

  watchLink((link, because) => {
    if (because !== undefined) trouble.set(because)
    if (link === 'connected') void readAll()
    else host.link.set(link)
  })
  return host
}
