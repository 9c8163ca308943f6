import { describe, expect, it } from 'vitest'
import { encodeMessage } from '#contract/wire/messageCoding.ts'
import type { HostLink } from '#renderer/host/hostConnection.ts'
import { createReconnectingCarrier, type ReconnectParts, type SocketLike } from '#renderer/host/reconnectingCarrier.ts'

/** A socket without a network: the test is its other end. */
function fakeSocket() {
  const sent: unknown[] = []
  const socket: SocketLike & { sent: unknown[] } = {
    binaryType: 'blob',
    onopen: null,
    onclose: null,
    onmessage: null,
    sent,
    send: (data) => void sent.push(data),
    close: () => socket.onclose?.(undefined as never),
  }
  return socket
}

const later = () => new Promise((resolve) => setImmediate(resolve))

function setUp(refusal?: ReconnectParts['refusal']) {
  const sockets: ReturnType<typeof fakeSocket>[] = []
  const pauses: { seconds: number; call: () => void }[] = []
  const links: HostLink[] = []
  const { carrier, watchLink } = createReconnectingCarrier({
    open() {
      const socket = fakeSocket()
      sockets.push(socket)
      return socket
    },
    after: (seconds, call) => void pauses.push({ seconds, call }),
    ...(refusal === undefined ? {} : { refusal }),
  })
  const because: unknown[] = []
  watchLink((link, reason) => {
    links.push(link)
    if (reason !== undefined) because.push(reason)
  })
  const say = (message: unknown) => {
    const { text, binary } = encodeMessage(message)
    const socket = sockets.at(-1)!
    socket.onmessage?.({ data: text } as MessageEvent)
    if (binary !== null) socket.onmessage?.({ data: binary.buffer } as MessageEvent)
  }
  return { sockets, pauses, links, because, carrier, say, open: () => sockets.at(-1)!.onopen?.(undefined as never) }
}

describe('createReconnectingCarrier', () => {
  it('carries a call and its reply', async () => {
    const { carrier, open, say, sockets } = setUp()
    open()
    const answer = carrier.call('bench.state', {})
    expect(JSON.parse(sockets[0]!.sent[0] as string).body).toEqual({ id: 0, name: 'bench.state', input: {} })
    say({ id: 0, reply: { ok: true, value: 7 } })
    expect(await answer).toEqual({ ok: true, value: 7 })
  })

  it('sends what is large as a blob with the same bytes, so that the page is not held up', async () => {
    const { carrier, open, sockets } = setUp()
    open()
    const content = Uint8Array.from({ length: 1_000_001 }, (_, i) => i)
    void carrier.call('pictures.attach', { content })
    const sent = sockets[0]!.sent[1] as Blob
    expect(sent).toBeInstanceOf(Blob)
    expect(Buffer.compare(new Uint8Array(await sent.arrayBuffer()), content)).toBe(0)
    void carrier.call('pictures.attach', { content: content.subarray(0, 9) })
    expect(sockets[0]!.sent[3]).toEqual(content.subarray(0, 9))
  })

  it('hands typed arrays of an event on as typed arrays', () => {
    const { carrier, open, say } = setUp()
    open()
    const heard: unknown[] = []
    carrier.subscribe((name, payload) => heard.push([name, payload]))
    say({ event: 'live.frame', payload: { timeS: Float64Array.of(1, 2) } })
    expect(heard).toEqual([['live.frame', { timeS: Float64Array.of(1, 2) }]])
  })

  it('fails calls that wait when the socket closes, says so, and connects again after a growing pause', async () => {
    const { carrier, open, sockets, pauses, links } = setUp()
    open()
    const lost = carrier.call('bench.state', {})
    sockets[0]!.close()
    await expect(lost).rejects.toMatchObject({ code: 'not-connected' })
    await expect(carrier.call('bench.state', {})).rejects.toMatchObject({ code: 'not-connected' })
    pauses[0]!.call()
    sockets[1]!.close()
    expect(pauses[1]!.seconds).toBeGreaterThan(pauses[0]!.seconds)
    pauses[1]!.call()
    open()
    expect(links).toEqual(['connecting', 'connected', 'lost', 'lost', 'connected'])
  })

  it('asks why when a socket never opens, and tries no more once it is refused', async () => {
    const denied = { code: 'denied', message: 'Not let in.', hint: 'Open the address.' } as const
    const answers = [null, denied]
    const { sockets, pauses, links, because } = setUp(async () => answers.shift() ?? null)
    sockets[0]!.close()
    await later()
    pauses[0]!.call()
    sockets[1]!.close()
    await later()
    expect(links).toEqual(['connecting', 'lost', 'refused'])
    expect(because).toEqual([denied])
    expect(pauses).toHaveLength(1)
  })

  it('keeps listeners across sockets, each hearing an event once', () => {
    const { carrier, open, sockets, pauses, say } = setUp()
    open()
    let heard = 0
    const end = carrier.subscribe(() => heard++)
    sockets[0]!.close()
    pauses[0]!.call()
    open()
    say({ event: 'records.changed', payload: {} })
    expect(heard).toBe(1)
    end()
    say({ event: 'records.changed', payload: {} })
    expect(heard).toBe(1)
  })
})
