import { describe, expect, test } from 'vitest'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import { createFrameReader, defaultFrameLimits, encodeMessage } from '#contract/wire/messageCoding.ts'
import { bridgeSocket } from '#shells/loopback/socketBridge.ts'
import { createScriptedEngine } from '#tests/fakes/scripted/scriptedEngine.ts'

function connect(dispatch = createDispatcher(createScriptedEngine({ 'ports.list': async () => [] }).handlers)) {
  const seen: unknown[] = []
  const reader = createFrameReader((message) => seen.push(message), defaultFrameLimits)
  const socket = {
    bufferedAmount: 0,
    open: true,
    closedWith: null as number | null,
    terminated: false,
    send: (frame: string | Uint8Array) =>
      typeof frame === 'string' ? reader.text(frame) : reader.binary(frame as Uint8Array<ArrayBuffer>),
    close(code: number) {
      socket.closedWith = code
      socket.open = false
    },
    terminate() {
      socket.terminated = true
      socket.open = false
    },
  }
  return { socket, seen, bridge: bridgeSocket(socket, dispatch) }
}

const later = () => new Promise((resolve) => setImmediate(resolve))
const liveFrame = (i: number) => ({
  timeS: Float64Array.of(i),
  force: Float64Array.of(i),
  unit: 'N',
  latest: i,
  loadRange: null,
  peak: i,
})

describe('bridgeSocket', () => {
  test('answers a request under its number', async () => {
    const { bridge, seen } = connect()
    bridge.receiveText(encodeMessage({ id: 5, name: 'ports.list', input: {} }).text)
    await later()
    expect(seen).toEqual([{ id: 5, reply: { ok: true, value: [] } }])
  })

  test.each([
    'garbage',
    '',
    '{}',
    '{"body":{"id":-1,"name":"ports.list","input":{}},"arrays":[]}',
    '{"body":{"id":1,"name":5,"input":{}},"arrays":[]}',
    '{"body":{"id":1,"name":"ports.list","input":{},"more":1},"arrays":[]}',
    `{"body":${'['.repeat(100_000)}`,
  ])('a bad frame closes the socket and no more', async (frame) => {
    const { bridge, socket, seen } = connect()
    bridge.receiveText(frame)
    await later()
    expect(socket.closedWith).toBe(1008)
    expect(seen).toEqual([])
  })

  test('a binary frame that nobody announced closes the socket', () => {
    const { bridge, socket } = connect()
    bridge.receiveBinary(new Uint8Array(8))
    expect(socket.closedWith).toBe(1008)
  })

  test.each(['the dispatcher', 'the socket'])(
    'a fault of %s that nobody foresaw ends the socket and no more',
    async (where) => {
      const fault = () => {
        throw new RangeError('offset is out of bounds')
      }
      const { bridge, socket } = connect(where === 'the dispatcher' ? fault : undefined)
      if (where === 'the socket') socket.send = fault
      bridge.receiveText(encodeMessage({ id: 5, name: 'ports.list', input: {} }).text)
      await later()
      expect(socket.terminated).toBe(true)
    },
  )

  test('live frames are left out for a client that does not keep up; nothing else is', () => {
    const { bridge, socket, seen } = connect()
    bridge.sendEvent('live.frame', liveFrame(1))
    socket.bufferedAmount = 2_000_000
    bridge.sendEvent('live.frame', liveFrame(2))
    bridge.sendEvent('task.progress', { task: 'verify', done: 1, total: 2 })
    socket.bufferedAmount = 0
    bridge.sendEvent('live.frame', liveFrame(3))
    expect(seen).toEqual([
      { event: 'live.frame', payload: liveFrame(1) },
      { event: 'task.progress', payload: { task: 'verify', done: 1, total: 2 } },
      { event: 'live.frame', payload: liveFrame(3) },
    ])
  })

  test('a client that has stopped reading is let go before memory runs out', () => {
    const { bridge, socket, seen } = connect()
    socket.bufferedAmount = 700_000_000
    bridge.sendEvent('task.progress', { task: 'verify', done: 1, total: 2 })
    expect(socket.terminated).toBe(true)
    expect(seen).toEqual([])
  })

  test('a reply that comes after the socket has gone is dropped', async () => {
    const { bridge, socket, seen } = connect()
    bridge.receiveText(encodeMessage({ id: 5, name: 'ports.list', input: {} }).text)
    socket.open = false
    await later()
    expect(seen).toEqual([])
  })

  test('a reply that a page could not take is told, and nobody hangs up', async () => {
    const { bridge, seen } = connect(async () => ({ ok: true, value: new Uint8Array(256_000_001) }))
    bridge.receiveText(encodeMessage({ id: 6, name: 'ports.list', input: {} }).text)
    await later()
    expect(seen).toMatchObject([{ id: 6, reply: { ok: false, error: { code: 'unsupported' } } }])
  })

  test('a reply that cannot be sent is told as a fault of the program', async () => {
    const { bridge, seen } = connect(async () => ({ ok: true, value: Number.NaN }))
    bridge.receiveText(encodeMessage({ id: 6, name: 'ports.list', input: {} }).text)
    await later()
    expect(seen).toMatchObject([{ id: 6, reply: { ok: false, error: { code: 'internal' } } }])
  })
})
