import { correctTheValue, Trouble } from '../errors.ts'

/**
 * How a message crosses a WebSocket with its typed arrays intact.
 *
 * One message is one text frame, followed by one binary frame when the message holds typed arrays. The text frame is JSON:
 *
 *   { "body": <the message, null where an array was>, "arrays": [{ "path": ["reply","value","timeS"], "kind": "Float64Array", "length": 3 }] }
 *
 * The binary frame holds the arrays in that order, each starting at a multiple of eight bytes and nothing behind the last, little-endian as every
 * machine that runs this program is. An array is named by where it belongs, so no text that a person types can be mistaken for one.
 */

const arrayKinds = {
  Float64Array,
  Float32Array,
  Int32Array,
  Uint32Array,
  Int16Array,
  Uint16Array,
  Int8Array,
  Uint8Array,
} as const
type ArrayKind = keyof typeof arrayKinds
type TypedArray = InstanceType<(typeof arrayKinds)[ArrayKind]>

type Lifted = { path: (string | number)[]; kind: ArrayKind; length: number }

/** A message as it goes over the wire; binary is null when the message holds no typed array. */
export type Frames = { text: string; binary: Uint8Array<ArrayBuffer> | null }

/** Bounds on what is accepted from the other side. */
export type FrameLimits = { textCharacters: number; binaryBytes: number }

/**
 * A curve of a million samples is 16 MB; an hour at 10 kHz, 576 MB, is asked for thinned. As text, sheets of 20,000 labels take 60
 * million characters, and results of 100,000 blocks half of that.
 */
export const defaultFrameLimits: FrameLimits = { textCharacters: 256_000_000, binaryBytes: 256_000_000 }

const maxDepth = 64
const maxArrays = 10_000
const aligned = (bytes: number) => Math.ceil(bytes / 8) * 8

/**
 * Turns a message into frames. Throws Trouble `invalid-input` for what cannot cross: a number that is not finite, a
 * function, an object of a class, a value nested too deep (or in a circle).
 */
export function encodeMessage(message: unknown): Frames {
  const arrays: TypedArray[] = []
  const lifted: Lifted[] = []
  const path: (string | number)[] = []

  function strip(value: unknown): unknown {
    if (typeof value === 'number' && !Number.isFinite(value)) throw cannotCross(path, `the number ${value}`)
    if (typeof value === 'function' || typeof value === 'symbol' || typeof value === 'bigint')
      throw cannotCross(path, `a ${typeof value}`)
    if (typeof value !== 'object' || value === null) return value
    if (path.length > maxDepth) throw cannotCross(path.slice(0, 3), 'a value nested too deep')
    if (Array.isArray(value)) return value.map((item, index) => stripAt(index, item))
    const kind = kindOf(value)
    if (kind !== null) {
      const array = value as TypedArray
      arrays.push(array)
      lifted.push({ path: [...path], kind, length: array.length })
      return null
    }
    const prototype = Object.getPrototypeOf(value) as unknown
    if (prototype !== Object.prototype && prototype !== null) throw cannotCross(path, 'an object of a class')
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, stripAt(key, item)]))
  }

  function stripAt(key: string | number, value: unknown): unknown {
    path.push(key)
    const stripped = strip(value)
    path.pop()
    return stripped
  }

  const body = strip(message)
  return { text: JSON.stringify({ body, arrays: lifted }), binary: arrays.length === 0 ? null : joined(arrays) }
}

/**
 * Puts arriving frames together again and hands on whole messages. Each function throws Trouble `denied` on a frame that
 * breaks the format or the limits; the owner then closes the socket and uses the reader no more.
 */
export function createFrameReader(
  onMessage: (message: unknown) => void,
  limits: FrameLimits,
): { text(frame: string): void; binary(frame: Uint8Array<ArrayBuffer>): void } {
  let waiting: { body: unknown; arrays: Lifted[]; bytes: number } | null = null
  return {
    text(frame) {
      if (waiting !== null) throw badFrame('a text frame came where a binary frame was due')
      const envelope = parseEnvelope(frame, limits)
      if (envelope.arrays.length === 0) onMessage(envelope.body)
      else waiting = envelope
    },
    binary(frame) {
      if (waiting === null) throw badFrame('a binary frame came where a text frame was due')
      const { body, arrays, bytes } = waiting
      if (frame.byteLength !== bytes)
        throw badFrame(`a binary frame holds ${frame.byteLength} bytes instead of ${bytes}`)
      waiting = null
      onMessage(putBack(body, arrays, frame))
    },
  }
}

function joined(arrays: readonly TypedArray[]): Uint8Array<ArrayBuffer> {
  const views = arrays.map(({ buffer, byteOffset, byteLength }) => new Uint8Array(buffer, byteOffset, byteLength))
  // The bytes of a file are sent as they lie, since nobody writes to them again: copying thirty megabytes would hold the page up.
  const [only] = views
  if (arrays.length === 1 && arrays[0] instanceof Uint8Array && only?.buffer instanceof ArrayBuffer)
    return new Uint8Array(only.buffer, only.byteOffset, only.byteLength)
  const { starts, bytes: length } = layoutOf(views.map(({ byteLength }) => byteLength))
  const bytes = new Uint8Array(length)
  views.forEach((view, i) => {
    bytes.set(view, starts[i]!)
  })
  return bytes
}

/** Where arrays of so many bytes begin in a frame, and how long it is. */
function layoutOf(lengths: readonly number[]): { starts: number[]; bytes: number } {
  let bytes = 0
  const starts = lengths.map((length) => {
    const start = aligned(bytes)
    bytes = start + length
    return start
  })
  return { starts, bytes }
}

function parseEnvelope(frame: string, limits: FrameLimits): { body: unknown; arrays: Lifted[]; bytes: number } {
  if (frame.length > limits.textCharacters) throw badFrame(`a text frame holds ${frame.length} characters`)
  let envelope: unknown
  try {
    envelope = JSON.parse(frame)
  } catch {
    throw badFrame('a text frame is no JSON')
  }
  if (!isRecord(envelope) || !Object.hasOwn(envelope, 'body') || !Array.isArray(envelope.arrays))
    throw badFrame('a text frame lacks "body" or "arrays"')
  if (isDeeperThan(maxDepth + 1, envelope.body)) throw badFrame('a message is nested too deep')
  if (envelope.arrays.length > maxArrays) throw badFrame(`a message names ${envelope.arrays.length} arrays`)
  const arrays = envelope.arrays.map(parseLifted)
  const { bytes } = layoutOf(arrays.map(({ kind, length }) => length * arrayKinds[kind].BYTES_PER_ELEMENT))
  if (bytes > limits.binaryBytes) throw badFrame(`a message announces ${bytes} bytes`)
  return { body: envelope.body, arrays, bytes }
}

/** Looks no further down than `levels`, so that no message can exhaust the stack. */
function isDeeperThan(levels: number, value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false
  return levels === 0 || Object.values(value).some((item) => isDeeperThan(levels - 1, item))
}

function parseLifted(value: unknown): Lifted {
  if (!isRecord(value)) throw badFrame('an array is not described')
  const { path, kind, length } = value
  if (typeof kind !== 'string' || !Object.hasOwn(arrayKinds, kind)) throw badFrame('an array is of no known kind')
  if (typeof length !== 'number' || !Number.isSafeInteger(length) || length < 0)
    throw badFrame('an array has no proper length')
  const isStep = (step: unknown) => typeof step === 'string' || Number.isSafeInteger(step)
  if (!Array.isArray(path) || path.length > maxDepth || !path.every(isStep))
    throw badFrame('an array has no proper path')
  return { path: path as (string | number)[], kind: kind as ArrayKind, length }
}

function putBack(body: unknown, arrays: readonly Lifted[], frame: Uint8Array<ArrayBuffer>): unknown {
  // A view must start at a multiple of its element size in its buffer; a frame cut out of a larger buffer may not. Not by
  // slice(): a frame of Node's is a Buffer, whose slice shares the bytes and stays where it is.
  const bytes = frame.byteOffset % 8 === 0 ? frame : new Uint8Array(frame)
  const root: Record<string, unknown> = { body }
  const { starts } = layoutOf(arrays.map(({ kind, length }) => length * arrayKinds[kind].BYTES_PER_ELEMENT))
  arrays.forEach(({ path, kind, length }, i) => {
    placeAt(root, ['body', ...path], new arrayKinds[kind](bytes.buffer, bytes.byteOffset + starts[i]!, length))
  })
  return root.body
}

function placeAt(root: Record<string, unknown>, path: readonly (string | number)[], array: TypedArray): void {
  let holder: Record<string | number, unknown> = root
  for (const step of path.slice(0, -1)) {
    const inner = Object.hasOwn(holder, step) ? holder[step] : undefined
    if (typeof inner !== 'object' || inner === null || kindOf(inner) !== null) throw badFrame(misplaced)
    holder = inner as Record<string | number, unknown>
  }
  const last = path.at(-1)!
  if (!Object.hasOwn(holder, last) || holder[last] !== null) throw badFrame(misplaced)
  Object.defineProperty(holder, last, { value: array, writable: true, enumerable: true, configurable: true })
}

function kindOf(value: object): ArrayKind | null {
  for (const kind of Object.keys(arrayKinds) as ArrayKind[]) if (value instanceof arrayKinds[kind]) return kind
  return null
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const cannotCross = (path: readonly (string | number)[], what: string) =>
  new Trouble(
    'invalid-input',
    `${path.length === 0 ? 'The message' : path.join('.')} holds ${what}, which cannot be sent.`,
    correctTheValue,
  )

const misplaced = 'an array belongs nowhere in its message'

const badFrame = (what: string) =>
  new Trouble('denied', `The connection was closed: ${what}.`, 'Reload the page or restart the program.')
