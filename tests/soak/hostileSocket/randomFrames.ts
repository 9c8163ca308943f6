import { type ProcedureName, procedures } from '#contract/procedures.ts'
import { encodeMessage } from '#contract/wire/messageCoding.ts'
import type { RandomStream } from '#domain/numbers/random.ts'
import { hostileValue, oneOf } from './randomInput.ts'

/** What is sent at once over one socket. raw: bytes on the bare connection, past the framing of WebSockets. */
export type HostileFrames = { frames: (string | Uint8Array)[]; raw: boolean }

const kinds = ['Float64Array', 'Float32Array', 'Int16Array', 'Uint8Array', 'BigInt64Array', 'constructor', '']
const lengths = [0, 1, 2, 7, -1, 0.5, 2 ** 21, 2 ** 53, '1', null]

/** One message that no page of ours would send, of one of seven sorts. */
export function randomFrames(random: RandomStream): HostileFrames {
  const sort = Math.floor(random.unit() * 7)
  const framed = (...frames: (string | Uint8Array)[]): HostileFrames => ({ frames, raw: false })
  if (sort === 0) return framed(randomBytes(random, 64))
  if (sort === 1) return framed(Buffer.from(randomBytes(random, 64)).toString('latin1'))
  if (sort === 2) return { frames: [randomBytes(random, 32)], raw: true }
  if (sort === 3) return framed(damaged(goodRequest(random), random))
  if (sort === 4) return framed(nested(random))
  if (sort === 5) return framed(goodRequest(random))
  const array = withArray(random)
  return framed(array.text, random.unit() < 0.7 ? new Uint8Array(array.bytes) : randomBytes(random, 40))
}

function randomBytes(random: RandomStream, most: number): Uint8Array {
  return Uint8Array.from({ length: Math.floor(random.unit() * most) }, () => Math.floor(random.unit() * 256))
}

function goodRequest(random: RandomStream): string {
  const name = oneOf(Object.keys(procedures) as ProcedureName[], random)
  return JSON.stringify({ body: { id: 1, name, input: JSON.parse(plainJson(hostileValue(random, 3))) }, arrays: [] })
}

const plainJson = (value: unknown) => JSON.stringify(value) ?? 'null'

/** With one to five characters lost, doubled or changed. */
function damaged(text: string, random: RandomStream): string {
  let left = text
  for (let i = 0; i <= Math.floor(random.unit() * 5); i++) {
    const at = Math.floor(random.unit() * left.length)
    left =
      left.slice(0, at) + oneOf(['', '"', '{', '}', '\0', '9', left.slice(at, at + 5)], random) + left.slice(at + 1)
  }
  return left
}

function nested(random: RandomStream): string {
  const levels = oneOf([60, 70, 1000, 100_000], random)
  const inside = oneOf(['[', '{"a":'], random)
  const end = random.unit() < 0.5 ? '' : (inside === '[' ? ']' : '}').repeat(levels)
  return `{"arrays":[],"body":${inside.repeat(levels)}${inside === '[' ? '' : '1'}${end}}`
}

/** Announces an array for a place in the input, sound or not. */
function withArray(random: RandomStream): { text: string; bytes: number } {
  if (random.unit() < 0.5) {
    const input = { a: Float64Array.of(1), b: Uint8Array.of(1, 2, 3) }
    const { text, binary } = encodeMessage({ id: 1, name: 'ports.list', input })
    return { text, bytes: binary?.byteLength ?? 0 }
  }
  const length = oneOf(lengths, random)
  const path = oneOf<unknown[]>([['input'], ['input', 'a'], ['__proto__', 'a'], [], [{}], ['id']], random)
  const body = { id: 1, name: 'ports.list', input: oneOf([null, { a: null }], random) }
  const bytes = typeof length === 'number' && length > 0 && length < 100 ? Math.ceil(length) * 8 : 8
  return { text: JSON.stringify({ body, arrays: [{ path, kind: oneOf(kinds, random), length }] }), bytes }
}
