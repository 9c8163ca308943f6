import type * as z from 'zod'
import type { RandomStream } from '#domain/numbers/random.ts'

/** As much of a schema's definition as is followed; zod tells it of every schema. */
type Definition = {
  type: string
  format?: string
  shape?: Record<string, z.ZodType>
  element?: z.ZodType
  innerType?: z.ZodType
  in?: z.ZodType
  options?: z.ZodType[]
  entries?: Record<string, string>
  values?: unknown[]
}

const hostileTexts = [
  '',
  ' ',
  '\0',
  'C1-LL-1\u200b',
  '\u202egnirts',
  '\u001b[2J\u0007',
  '\ud800',
  'ﬁ½①',
  "'; DROP TABLE specimen; --",
  '%s%n{{7*7}}<script>',
  '__proto__',
  'x'.repeat(200),
  'x'.repeat(201),
  'é'.repeat(4001),
  'y'.repeat(100_000),
]
const hostileNumbers = [0, -0, -1, 0.5, 1e-320, 1e308, -1e308, 2 ** 31, 2 ** 53, 2 ** 53 + 2, 2 ** 63]

/** One of them. */
export function oneOf<T>(values: readonly T[], random: RandomStream): T {
  return values[Math.floor(random.unit() * values.length)]!
}

/** A value that fits a schema in shape, or, once in so many places, anything at all. */
export function randomInput(schema: z.ZodType, random: RandomStream, hostileShare: number): unknown {
  if (random.unit() < hostileShare) return hostileValue(random, 3)
  const definition = schema.def as unknown as Definition
  const inner = (part: z.ZodType) => randomInput(part, random, hostileShare)
  switch (definition.type) {
    case 'object':
      return randomObject(definition.shape ?? {}, random, hostileShare)
    case 'array':
      return Array.from({ length: Math.floor(random.unit() * 4) }, () => inner(definition.element!))
    case 'string':
      return definition.format === undefined ? randomText(random) : randomInstant(definition.format)
    case 'number':
    case 'int':
      return randomNumber(random)
    case 'boolean':
      return random.unit() < 0.5
    case 'enum':
      return oneOf(Object.values(definition.entries ?? {}), random)
    case 'literal':
      return oneOf(definition.values ?? [null], random)
    case 'union':
      return inner(oneOf(definition.options!, random))
    case 'nullable':
      return random.unit() < 0.2 ? null : inner(definition.innerType!)
    case 'optional':
    case 'default':
      return random.unit() < 0.3 ? undefined : inner(definition.innerType!)
    case 'custom':
      return schema.safeParse(new Uint8Array()).success ? randomFile(random) : hostileValue(random, 2)
    case 'record':
      return {}
    case 'pipe':
      return inner(definition.in!)
    default:
      return hostileValue(random, 2)
  }
}

function randomObject(shape: Record<string, z.ZodType>, random: RandomStream, hostileShare: number): unknown {
  const made = Object.entries(shape).map(([key, part]) => [key, randomInput(part, random, hostileShare)] as const)
  if (random.unit() < hostileShare) made.push([oneOf(hostileTexts, random), hostileValue(random, 1)])
  return Object.fromEntries(made.filter(([, value]) => value !== undefined))
}

function randomText(random: RandomStream): string {
  const kind = random.unit()
  if (kind < 0.15) return oneOf(hostileTexts, random)
  return `C${Math.floor(random.unit() * 4)}-LL-${Math.floor(random.unit() * 1000)}`
}

const randomInstant = (format: string) => (format === 'date' ? '2026-11-30' : '2026-11-30T08:15:00.000Z')

function randomNumber(random: RandomStream): number {
  const kind = random.unit()
  if (kind < 0.1) return oneOf(hostileNumbers, random)
  if (kind < 0.8) return 1 + Math.floor(random.unit() * 40)
  return random.unit() * 1000 - 100
}

const png = '89504e470d0a1a0a0000000d49484452'
/** What people bring as files, and what only looks like it: tables, logs, packed files, pictures, one of 4 gigapixels among them. */
const files: readonly Buffer[] = [
  Buffer.from('Number,Adhesive,Load\nA-1,casein C1,450\nA-2,epoxy E4,12 lbf\n'),
  Buffer.from('Time,Temp,RH\n2026-01-01 00:00,5,40\n2026-01-01 01:00,6,140\n2026-01-01 00:30,6,40\n'),
  Buffer.from('\ufeffAdhesive;Load\n"A;5\n', 'utf16le'),
  Buffer.from('PK\u0003\u0004', 'latin1'),
  Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'),
  Buffer.from(`${png}0000000a0000000a08060000008d32cfbd`, 'hex'),
  Buffer.from(`${png}0001000000010000080600000000000000`, 'hex'),
  Buffer.from('ffd8ffe000104a46494600010100000100010000ffc0001108ffffffff03', 'hex'),
  Buffer.from('GIF89a\u0001\0\u0001\0', 'latin1'),
  Buffer.from('RIFF\0\0\0\0WEBPVP8X', 'latin1'),
]

/** A file, whole, cut off, or with a byte changed. */
function randomFile(random: RandomStream): Uint8Array {
  const whole = oneOf(files, random)
  const kind = random.unit()
  const bytes = new Uint8Array(kind < 0.2 ? whole.subarray(0, Math.floor(random.unit() * whole.length)) : whole)
  if (kind > 0.8) bytes[Math.floor(random.unit() * bytes.length)] = Math.floor(random.unit() * 256)
  return bytes
}

/** Anything that can be sent: of any kind, of any shape. */
export function hostileValue(random: RandomStream, depth: number): unknown {
  const kind = Math.floor(random.unit() * (depth > 0 ? 9 : 6))
  if (kind === 0) return null
  if (kind === 1) return random.unit() < 0.5
  if (kind === 2) return oneOf(hostileNumbers, random)
  if (kind <= 4) return oneOf(hostileTexts, random)
  if (kind === 5) return Float64Array.of(Number.NaN, Number.POSITIVE_INFINITY, 1)
  const count = Math.floor(random.unit() * 4)
  if (kind === 6) return Array.from({ length: count }, () => hostileValue(random, depth - 1))
  return Object.fromEntries(
    Array.from({ length: count }, () => [oneOf(hostileTexts, random), hostileValue(random, depth - 1)]),
  )
}
