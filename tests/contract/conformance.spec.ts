import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { Trouble, troubleCode } from '#contract/errors.ts'
import { type Handlers, procedures } from '#contract/procedures.ts'
import { largestPictureBytes } from '#contract/specimens/pictureProcedures.ts'
import { createClient } from '#contract/wire/carrier.ts'
import { createScriptedEngine, type ScriptedEngine } from '#tests/fakes/scripted/scriptedEngine.ts'
import { type ConnectedCarrier, carriers } from './carriers.ts'

const port = {
  path: '/dev/ttyUSB0',
  manufacturer: 'Maker & Söhne',
  serialNumber: null,
  vendorId: null,
  productId: null,
}

// Values whose bits a detour through decimal text or single precision would change.
const awkward = Float64Array.of(0.1, 1 / 3, Number.MIN_VALUE, Number.MAX_VALUE, -0, 2 ** 53 + 2)

const script: Partial<Handlers> = {
  'ports.list': async () => [port],
  'breaks.curve': async ({ breakId, maxPoints }) => {
    if (breakId === 1) return { timeS: awkward.map((_, i) => i), force: awkward, unit: 'N', samples: awkward.length }
    const length = maxPoints ?? 0
    return {
      timeS: Float64Array.from({ length }, (_, i) => i / 80),
      force: Float64Array.from({ length }, (_, i) => Math.sin(i)),
      unit: 'counts',
      samples: length,
    }
  },
  'bench.tare': async () => {
    throw new Trouble('not-stable', 'The signal moves too much to take a zero: 12 N in 1 s.', 'Wait until it is still.')
  },
  'task.cancel': (async () => 'yes') as never,
  'demo.fill': async () => {
    throw new RangeError('peakForce requires at least one sample')
  },
  'pictures.attach': async ({ content, ...sent }) => ({
    ...sent,
    attachmentId: 1,
    recordedAt: '2026-05-11T08:00:00.000Z',
    mediaType: 'image/png',
    bytes: content.length,
    sha256: String(content.at(-1)).repeat(64),
  }),
  'specimens.list': async (query) => ({ total: query.limit, rows: [] }),
}

describe.each(Object.entries(carriers))('the contract over %s', (_name, connect) => {
  let engine: ScriptedEngine
  let connected: ConnectedCarrier

  beforeEach(async () => {
    engine = createScriptedEngine(script)
    connected = await connect(engine)
  })
  afterEach(() => connected.close())

  const client = () => createClient(connected.carrier, () => expect.unreachable('an event did not parse'))
  const errorOf = async (name: string, input: unknown) => {
    const reply = (await connected.carrier.call(name, input)) as { ok: boolean; error?: unknown }
    expect(reply.ok).toBe(false)
    return reply.error
  }

  test.each(Object.keys(procedures))('%s is there and refuses an input that is none', async (name) => {
    expect(await errorOf(name, 42)).toMatchObject({ code: 'invalid-input' })
  })

  test.each(['no.such', '', 'constructor', '__proto__', 'toString'])('"%s" is refused as unknown', async (name) => {
    expect(await errorOf(name, {})).toMatchObject({ code: 'unknown-procedure' })
  })

  test('an input with an unknown key, a missing key or a number that is not finite is refused', async () => {
    for (const input of [{ breakId: 1, extra: true }, {}, { breakId: Number.NaN }, { breakId: 1, fromS: Infinity }])
      expect(await errorOf('breaks.curve', input)).toMatchObject({ code: 'invalid-input' })
  })

  test('an input that cannot be copied never reaches a handler', async () => {
    const answer = await connected.carrier.call('ports.list', { callback: () => 0 }).catch(() => ({ ok: false }))
    expect(answer).toMatchObject({ ok: false })
  })

  test('a value comes back as it was given, letters of any script included', async () => {
    expect(await client().call('ports.list', {})).toEqual([port])
  })

  test('defaults are filled in before the handler sees the input', async () => {
    expect(await client().call('specimens.list', {})).toEqual({ total: 200, rows: [] })
  })

  test('a trouble crosses with its code, message and hint', async () => {
    const thrown = await client()
      .call('bench.tare', {})
      .catch((error: unknown) => error)
    expect(thrown).toBeInstanceOf(Trouble)
    expect(thrown).toMatchObject({
      code: 'not-stable',
      message: 'The signal moves too much to take a zero: 12 N in 1 s.',
      hint: 'Wait until it is still.',
    })
  })

  test('a fault of the program crosses as internal, with its message and without its stack', async () => {
    const error = await errorOf('demo.fill', {})
    expect(error).toMatchObject({ code: 'internal', message: 'peakForce requires at least one sample' })
    expect(Object.keys(error as object).sort()).toEqual(['code', 'hint', 'message'])
  })

  test('an answer that breaks the contract is refused before it leaves the program', async () => {
    expect(await errorOf('task.cancel', { task: 'verify' })).toMatchObject({
      code: troubleCode.enum.internal,
      message: expect.stringContaining('task.cancel'),
    })
  })

  test('curves stay typed arrays, equal to the last bit', async () => {
    const curve = await client().call('breaks.curve', { breakId: 1 })
    expect(curve.force).toBeInstanceOf(Float64Array)
    expect(new Uint8Array(curve.force.buffer, curve.force.byteOffset, curve.force.byteLength)).toEqual(
      new Uint8Array(awkward.buffer),
    )
  })

  test('the largest picture that is taken crosses whole', async () => {
    const content = new Uint8Array(largestPictureBytes)
    content[largestPictureBytes - 1] = 7
    const sent = { specimenId: 1, breakId: null, name: 'a face', content, by: '' }
    expect(await client().call('pictures.attach', sent)).toMatchObject({
      bytes: largestPictureBytes,
      sha256: '7'.repeat(64),
    })
  })

  test('a curve of a million samples crosses whole', async () => {
    const length = 1_000_000
    const curve = await client().call('breaks.curve', { breakId: 2, maxPoints: length })
    expect(curve.force.length).toBe(length)
    expect(curve.force.every((force, i) => force === Math.sin(i))).toBe(true)
    expect(curve.timeS.every((time, i) => time === i / 80)).toBe(true)
  })

  test('events arrive in order, their arrays typed', async () => {
    const seen: unknown[] = []
    const host = client()
    const all = new Promise<void>((resolve) => {
      host.on('live.frame', (frame) => seen.push(frame.force))
      host.on('task.progress', ({ done }) => seen.push(done))
      host.on('trouble', () => resolve())
    })
    // The first reply shows that the way is open, so no event is sent before anyone listens.
    await host.call('ports.list', {})
    for (let i = 0; i < 50; i++) {
      engine.emit('task.progress', { task: 'verify', done: i, total: 50 })
      engine.emit('live.frame', {
        timeS: Float64Array.of(i),
        force: Float64Array.of(i / 3),
        unit: 'N',
        latest: null,
        loadRange: [i / 3, i / 3],
        peak: null,
      })
    }
    engine.emit('trouble', { code: 'port-lost', message: 'The port is gone.', hint: 'Plug it in.' })
    await all
    expect(seen).toEqual(Array.from({ length: 100 }, (_, i) => (i % 2 ? Float64Array.of((i - 1) / 2 / 3) : i / 2)))
  })

  test('a listener that has gone hears nothing more', async () => {
    const seen: number[] = []
    const heard: string[] = []
    const end = connected.carrier.subscribe((name) => heard.push(name))
    const host = client()
    const last = new Promise<void>((resolve) => {
      host.on('task.progress', ({ done }) => {
        seen.push(done)
        if (done === 2) resolve()
      })
    })
    await host.call('ports.list', {})
    end()
    engine.emit('task.progress', { task: 'verify', done: 1, total: 2 })
    engine.emit('task.progress', { task: 'verify', done: 2, total: 2 })
    await last
    expect(seen).toEqual([1, 2])
    expect(heard).toEqual([])
  })

  test('many calls at once get each its own answer', async () => {
    const host = client()
    const limits = Array.from({ length: 40 }, (_, i) => i + 1)
    const answers = await Promise.all(limits.map((limit) => host.call('specimens.list', { limit })))
    expect(answers.map(({ total }) => total)).toEqual(limits)
  })

  test('nothing of the carrier stays with the engine once it is closed', async () => {
    await client().call('ports.list', {})
    await connected.close()
    expect(engine.listeners()).toBe(0)
  })
})
