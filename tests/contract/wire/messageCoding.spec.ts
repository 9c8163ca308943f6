import { describe, expect, test } from 'vitest'
import { Trouble } from '#contract/errors.ts'
import {
  createFrameReader,
  defaultFrameLimits,
  encodeMessage,
  type FrameLimits,
  type Frames,
} from '#contract/wire/messageCoding.ts'

function decode({ text, binary }: Frames, limits: FrameLimits = defaultFrameLimits): unknown {
  const messages: unknown[] = []
  const reader = createFrameReader((message) => messages.push(message), limits)
  reader.text(text)
  if (binary !== null) reader.binary(binary)
  expect(messages).toHaveLength(1)
  return messages[0]
}

const frame = (body: unknown, arrays: unknown, bytes = 0): Frames => ({
  text: JSON.stringify({ body, arrays }),
  binary: new Uint8Array(bytes),
})
const float = (path: unknown, length: unknown = 1) => ({ path, kind: 'Float64Array', length })

describe('encodeMessage', () => {
  test('gives back what went in, with every kind of typed array', () => {
    const message = {
      id: 7,
      text: 'Śrut: 5 µm → "µ" \u2028',
      list: [null, true, [1.5, { deep: Uint8Array.of(1, 2, 3) }]],
      kinds: [
        Float64Array.of(0.1, -0),
        Float32Array.of(1.5),
        Int32Array.of(-1),
        Uint32Array.of(2 ** 32 - 1),
        Int16Array.of(-2),
        Uint16Array.of(3),
        Int8Array.of(-4),
      ],
      empty: new Float64Array(0),
    }
    expect(decode(encodeMessage(message))).toEqual(message)
  })

  test('sends no binary frame for a message without arrays', () => {
    expect(encodeMessage({ a: 1 })).toEqual({ text: '{"body":{"a":1},"arrays":[]}', binary: null })
  })

  test('never writes an array as numbers', () => {
    const { text, binary } = encodeMessage({ force: new Float64Array(10_000).fill(1 / 3) })
    expect(text.length).toBeLessThan(200)
    expect(binary?.byteLength).toBe(80_000)
  })

  test('copies what may be written to again, and the bytes of a file not', () => {
    const samples = Float64Array.of(1, 2)
    const { binary } = encodeMessage({ samples })
    samples[0] = 9
    expect(new Float64Array(binary!.buffer, binary!.byteOffset, 2)[0]).toBe(1)
    const content = Uint8Array.of(1, 2, 3)
    expect(encodeMessage({ content }).binary!.buffer).toBe(content.buffer)
  })

  test('sends only the part of a buffer that a view shows', () => {
    const view = Float64Array.of(1, 2, 3, 4).subarray(1, 3)
    expect(decode(encodeMessage({ view }))).toEqual({ view: Float64Array.of(2, 3) })
  })

  test('a message that is itself an array, and one that looks like a placeholder, cross unharmed', () => {
    expect(decode(encodeMessage(Float64Array.of(9)))).toEqual(Float64Array.of(9))
    const lookalike = { path: ['a'], kind: 'Float64Array', length: 1, arrays: [float(['body'])], body: null }
    expect(decode(encodeMessage(lookalike))).toEqual(lookalike)
  })

  test('a key named __proto__ stays a key', () => {
    const message = JSON.parse('{"a":{"__proto__":{"polluted":true}}}')
    const crossed = decode(encodeMessage(message)) as { a: object }
    expect(Object.keys(crossed.a)).toEqual(['__proto__'])
    expect((crossed.a as { polluted?: boolean }).polluted).toBeUndefined()
  })

  test.each([
    ['a number that is not finite', { a: { b: [1, Number.NaN] } }],
    ['a function', { a: () => 0 }],
    ['a bigint', { a: 1n }],
    ['an object of a class', { a: new Date(0) }],
    ['a map', { a: new Map() }],
    ['an untyped view', { a: new DataView(new ArrayBuffer(8)) }],
  ])('refuses %s and says where it is', (_what, message) => {
    expect(() => encodeMessage(message)).toThrow(Trouble)
    expect(() => encodeMessage(message)).toThrow(/^a\b/)
  })

  test('refuses a value that contains itself', () => {
    const circle: Record<string, unknown> = {}
    circle.self = circle
    expect(() => encodeMessage(circle)).toThrow('nested too deep')
  })
})

describe('createFrameReader', () => {
  test('reads arrays from a frame that starts anywhere in its buffer', () => {
    const { text, binary } = encodeMessage({ a: Float64Array.of(1 / 3, 2), b: Uint8Array.of(5) })
    for (const offset of [1, 3, 4, 7]) {
      const shifted = new Uint8Array(binary!.length + offset).subarray(offset)
      shifted.set(binary!)
      expect(decode({ text, binary: shifted })).toEqual({ a: Float64Array.of(1 / 3, 2), b: Uint8Array.of(5) })
    }
  })

  test("reads arrays from a frame of Node's, whose slice shares its bytes", () => {
    const { text, binary } = encodeMessage({ a: Float64Array.of(1 / 3, 2) })
    for (const offset of [1, 6, 14]) {
      const shifted = Buffer.alloc(binary!.length + offset).subarray(offset)
      shifted.set(binary!)
      expect(decode({ text, binary: shifted as Uint8Array<ArrayBuffer> })).toEqual({ a: Float64Array.of(1 / 3, 2) })
    }
  })

  test('takes a message as deep as one may be sent, and none that is deeper', () => {
    const nested = (levels: number): unknown => (levels === 0 ? {} : { in: nested(levels - 1) })
    expect(decode(encodeMessage(nested(64)))).toEqual(nested(64))
    expect(() => decode({ text: JSON.stringify({ body: nested(65), arrays: [] }), binary: null })).toThrow('too deep')
    const deep = `{"body":${'['.repeat(100_000)}${']'.repeat(100_000)},"arrays":[]}`
    expect(() => decode({ text: deep, binary: null })).toThrow(Trouble)
  })

  test('hands on many messages in order', () => {
    const seen: unknown[] = []
    const reader = createFrameReader((message) => seen.push(message), defaultFrameLimits)
    for (let i = 0; i < 5; i++) {
      const { text, binary } = encodeMessage(i % 2 ? { i } : { i, a: Float64Array.of(i) })
      reader.text(text)
      if (binary !== null) reader.binary(binary)
    }
    expect(seen).toEqual([0, 1, 2, 3, 4].map((i) => (i % 2 ? { i } : { i, a: Float64Array.of(i) })))
  })

  test.each<[string, Frames]>([
    ['text that is no JSON', { text: '{"body":', binary: null }],
    ['an empty text', { text: '', binary: null }],
    ['JSON that is no envelope', { text: '[1,2]', binary: null }],
    ['null', { text: 'null', binary: null }],
    ['an envelope without arrays', { text: '{"body":1}', binary: null }],
    ['arrays that are no list', frame({}, { length: 1 })],
    ['an array that is no description', frame({ a: null }, [null], 8)],
    ['an unknown kind', frame({ a: null }, [{ path: ['a'], kind: 'BigInt64Array', length: 1 }], 8)],
    ['a kind out of the prototype', frame({ a: null }, [{ path: ['a'], kind: 'constructor', length: 1 }], 8)],
    ['a negative length', frame({ a: null }, [float(['a'], -1)], 8)],
    ['a broken length', frame({ a: null }, [float(['a'], 0.5)], 8)],
    ['a length beyond all bounds', frame({ a: null }, [float(['a'], 2 ** 53 - 1)], 8)],
    ['a length that is text', frame({ a: null }, [float(['a'], '1')], 8)],
    ['a path that is no list', frame({ a: null }, [float('a')], 8)],
    ['a path of objects', frame({ a: null }, [float([{}])], 8)],
    ['a path to nowhere', frame({ a: null }, [float(['b'])], 8)],
    ['a path to a place that is taken', frame({ a: 5 }, [float(['a'])], 8)],
    ['a path through a number', frame({ a: 5 }, [float(['a', 'b'])], 8)],
    ['a path into an array that was put there before', frame({ a: null }, [float(['a']), float(['a', 0])], 16)],
    ['a path to the prototype', frame({ a: null }, [float(['__proto__', 'polluted'])], 8)],
    ['a path to the constructor', frame({ a: null }, [float(['constructor', 'prototype'])], 8)],
    ['fewer bytes than announced', frame({ a: null }, [float(['a'])], 7)],
    ['more bytes than announced', frame({ a: null }, [float(['a'])], 9)],
    ['a path deeper than any message', frame({ a: null }, [float(Array.from({ length: 100 }, () => 'a'))], 8)],
    [
      'more arrays than any message has',
      frame(
        {},
        Array.from({ length: 10_001 }, () => float(['a'], 0)),
      ),
    ],
  ])('refuses %s', (_what, frames) => {
    expect(() => decode(frames)).toThrow(Trouble)
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
  })

  test('refuses frames out of turn', () => {
    const { text } = encodeMessage({ a: Float64Array.of(1) })
    const reader = createFrameReader(() => expect.unreachable(), defaultFrameLimits)
    expect(() => reader.binary(new Uint8Array(8))).toThrow('where a text frame was due')
    reader.text(text)
    expect(() => reader.text(text)).toThrow('where a binary frame was due')
  })

  test('refuses what is longer than its limits, before anything is made of it', () => {
    const limits = { textCharacters: 200, binaryBytes: 64 }
    expect(decode(encodeMessage({ a: new Float64Array(8) }), limits)).toEqual({ a: new Float64Array(8) })
    expect(() => decode(encodeMessage({ a: new Float64Array(9) }), limits)).toThrow('announces 72 bytes')
    expect(() => decode(encodeMessage({ a: 'x'.repeat(200) }), limits)).toThrow('characters')
  })
})
