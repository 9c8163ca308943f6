import { describe, expect, test } from 'vitest'
import { encodeMessage, type Frames } from '#contract/wire/messageCoding.ts'
import { createSocketCarrier } from '#contract/wire/socketCarrier.ts'

function connect() {
  const sent: Frames[] = []
  let closed = false
  const carrier = createSocketCarrier({
    send: (frames) => sent.push(frames),
    close: () => {
      closed = true
    },
  })
  return {
    carrier,
    sent,
    closed: () => closed,
    say: (message: unknown) => carrier.receiveText(encodeMessage(message).text),
  }
}

describe('createSocketCarrier', () => {
  test('matches replies to calls by number, in whatever order they come', async () => {
    const { carrier, say } = connect()
    const first = carrier.call('a', {})
    const second = carrier.call('b', {})
    say({ id: 1, reply: 'two' })
    say({ id: 0, reply: 'one' })
    expect(await Promise.all([first, second])).toEqual(['one', 'two'])
  })

  test('a reply that nobody waits for does no harm', async () => {
    const { carrier, say, closed } = connect()
    say({ id: 99, reply: 'stray' })
    const call = carrier.call('a', {})
    say({ id: 0, reply: 'mine' })
    expect(await call).toBe('mine')
    expect(closed()).toBe(false)
  })

  test('calls that wait are rejected when the socket goes, and later ones at once', async () => {
    const { carrier } = connect()
    const waiting = carrier.call('a', {})
    carrier.closed()
    await expect(waiting).rejects.toMatchObject({ code: 'not-connected' })
    await expect(carrier.call('b', {})).rejects.toMatchObject({ code: 'not-connected' })
  })

  test.each(['not json', '{"body":{"id":"x","reply":1},"arrays":[]}', '{"body":{},"arrays":[]}'])(
    'hangs up on %s and rejects what waits',
    async (frame) => {
      const { carrier, closed } = connect()
      const waiting = carrier.call('a', {})
      carrier.receiveText(frame)
      expect(closed()).toBe(true)
      await expect(waiting).rejects.toMatchObject({ code: 'not-connected' })
    },
  )

  test('an input that cannot be sent is answered as invalid, and nothing is sent', async () => {
    const { carrier, sent } = connect()
    expect(await carrier.call('a', { x: Number.NaN })).toMatchObject({ ok: false, error: { code: 'invalid-input' } })
    expect(sent).toEqual([])
  })

  test('a listener that throws does not end the connection', () => {
    const { carrier, say, closed } = connect()
    carrier.subscribe(() => {
      throw new TypeError('a fault in the page')
    })
    expect(() => say({ event: 'e', payload: 1 })).toThrow('a fault in the page')
    expect(closed()).toBe(false)
  })
})
