import { describe, expect, it } from 'vitest'
import type { Carrier } from '#contract/wire/carrier.ts'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import { type HostLink, joinHost } from '#renderer/host/hostConnection.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'

function setUp() {
  const scripted = createScriptedHost()
  const dispatch = createDispatcher(scripted.handlers)
  let tell: (name: string, payload: unknown) => void = () => {}
  let change: (link: HostLink) => void = () => {}
  const carrier: Carrier = {
    call: (name, input) => dispatch(name, input),
    subscribe(listener) {
      tell = listener
      return () => {}
    },
  }
  const host = joinHost(carrier, (watcher) => {
    change = watcher
    watcher('connected')
  })
  return {
    scripted,
    host,
    tell: (name: string, payload: unknown) => tell(name, payload),
    change: (link: HostLink) => change(link),
  }
}

const soon = () => new Promise((resolve) => setImmediate(resolve))

describe('joinHost', () => {
  it('reads the present state as soon as it is connected', async () => {
    const { host } = setUp()
    expect(host.link.get()).toBe('connecting')
    await soon()
    expect(host.link.get()).toBe('connected')
    expect(host.bench.get()?.phase).toBe('waiting')
    expect(host.preferences.get()?.capacityN).toBe(20_000)
  })

  it('follows the events of the host', async () => {
    const { host, scripted, tell } = setUp()
    await soon()
    tell('bench.state', { ...scripted.bench(), phase: 'loading' })
    expect(host.bench.get()?.phase).toBe('loading')
    let touched = 0
    host.changes.follow(['specimens'], () => touched++)
    tell('records.changed', { topics: ['break 1'] })
    tell('records.changed', { topics: ['specimen 1', 'specimen 2'] })
    expect(touched).toBe(1)
  })

  it('says that the host is gone and reads everything again when it is back', async () => {
    const { host, scripted, change } = setUp()
    await soon()
    change('lost')
    expect(host.link.get()).toBe('lost')
    scripted.setBench({ phase: 'broke' })
    let askedAgain = 0
    host.changes.follow([], () => askedAgain++)
    change('connected')
    await soon()
    expect(host.link.get()).toBe('connected')
    expect(host.bench.get()?.phase).toBe('broke')
    expect(askedAgain).toBe(1)
  })

  it('shows an event that it does not understand as a trouble instead of breaking', async () => {
    const { host, tell } = setUp()
    await soon()
    tell('bench.state', { phase: 'dancing' })
    expect(host.trouble.get()?.message).toContain('bench.state')
    expect(host.bench.get()?.phase).toBe('waiting')
  })
})
