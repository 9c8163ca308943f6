import { describe, expect, it } from 'vitest'
import { Trouble } from '#contract/errors.ts'
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
  let left = 0
  const host = joinHost(
    carrier,
    (watcher) => {
      change = watcher
      watcher('connected')
    },
    () => left++,
  )
  return {
    scripted,
    left: () => left,
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

  it('says what was wrong with the archive when it was opened', async () => {
    const { host, scripted, change } = setUp()
    await soon()
    expect(host.trouble.get()).toBeNull()
    const info = await scripted.handlers['app.info']({})
    scripted.handlers['app.info'] = async () => ({ ...info, chainFinding: 'shorter' })
    change('connected')
    await soon()
    expect(host.trouble.get()?.message).toContain('lacks records')
  })

  it('says a trouble in the units that the person reads', async () => {
    const { host, scripted, tell } = setUp()
    await soon()
    // NIST SP 811: 1 lbf = 4.4482216152605 N
    scripted.handlers['bench.tare'] = async () => {
      throw new Trouble('invalid-input', 'The rated load is 4448.2216152605 N.', '')
    }
    tell('preferences.changed', { ...host.preferences.get(), units: 'US' })
    await expect(host.client.call('bench.tare', {})).rejects.toThrow(/is 1\D?000.lbf/)
    tell('trouble', { code: 'internal', message: '4.4482216152605 N too much', hint: '' })
    expect(host.trouble.get()?.message).toMatch(/^1\.0.lbf/)
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

  it('asks nothing of another archive that another tab opened, where a number stands for another record', async () => {
    const { host, scripted, tell, left } = setUp()
    await soon()
    let tared = 0
    scripted.handlers['bench.tare'] = async () => ({ tared: tared++ }) as never
    tell('archive.switched', {})
    await expect(host.client.call('bench.tare', {})).rejects.toThrow(/Another archive was opened/)
    expect([tared, left(), host.link.get(), host.trouble.get()?.hint]).toEqual([
      0,
      1,
      'refused',
      'Load the page again.',
    ])
  })

  it('notices an archive that was opened while it was not connected', async () => {
    const { host, scripted, change, left } = setUp()
    await soon()
    const info = await scripted.handlers['app.info']({})
    change('lost')
    scripted.handlers['app.info'] = async () => ({ ...info, archive: { ...info.archive, path: '/loft' } })
    change('connected')
    await soon()
    expect([left(), host.link.get()]).toEqual([1, 'refused'])
  })

  it('asks nothing more once it opened another archive itself, and goes on where that failed', async () => {
    const { host, scripted, tell, left } = setUp()
    await soon()
    scripted.handlers['archive.switch'] = () => Promise.reject(new Trouble('conflict', 'in use', ''))
    await expect(host.client.call('archive.switch', { to: { kind: 'demo' } })).rejects.toThrow('in use')
    await host.client.call('app.info', {})
    scripted.handlers['archive.switch'] = async () => {
      tell('archive.switched', {})
      return {}
    }
    await host.client.call('archive.switch', { to: { kind: 'demo' } })
    expect([left(), host.link.get()]).toEqual([0, 'connected'])
    await expect(host.client.call('bench.tare', {})).rejects.toThrow(/Another archive was opened/)
  })
})
