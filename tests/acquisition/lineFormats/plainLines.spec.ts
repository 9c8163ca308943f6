import { describe, expect, it } from 'vitest'
import { createCheckedDecoder } from '#acquisition/lineFormats/checkedLine.ts'
import { createNumberDecoder } from '#acquisition/lineFormats/numberLine.ts'
import { type PlainLines, takePlainChecked, takePlainNumbers } from '#acquisition/lineFormats/plainLines.ts'
import { createReadingBatch } from '#acquisition/readingBatch.ts'
import { createRandom, type RandomStream } from '#domain/numbers/random.ts'

const latin1 = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0))

/** A check value as NMEA 0183 defines it, summed over the text. */
function checkedLine(body: string): string {
  const sum = [...body].reduce((so, letter) => so ^ letter.charCodeAt(0), 0)
  return `$${body}*${sum.toString(16).padStart(2, '0').toUpperCase()}`
}

const digitsOf = (random: RandomStream, most: number) =>
  Array.from({ length: random.wholeBetween(1, most) }, () => random.wholeBetween(0, 9)).join('')
const signOf = (random: RandomStream) => ['', '', '-', '+'][random.wholeBetween(0, 3)]!

const formats = [
  {
    name: 'number',
    take: takePlainNumbers,
    decoder: createNumberDecoder(),
    line: (random: RandomStream) => `${signOf(random)}${digitsOf(random, 12)}`,
  },
  {
    name: 'checked',
    take: takePlainChecked,
    decoder: createCheckedDecoder(),
    line: (random: RandomStream) =>
      checkedLine(`BL,${digitsOf(random, 11)},${digitsOf(random, 11)},${signOf(random)}${digitsOf(random, 12)}`),
  },
]

/** The line alone, as the plain way sees it; null: it wants a closer look. */
function takeOne(take: PlainLines, line: Uint8Array) {
  const batch = createReadingBatch()
  const bytes = Uint8Array.from([...line, 10])
  const next = take(bytes, 0, bytes.length, batch)
  expect([0, bytes.length]).toContain(next)
  expect(batch.count).toBe(next === 0 ? 0 : 1)
  return next === 0 ? null : [batch.values[0], batch.deviceTimeUs[0], batch.sequence[0]]
}

describe.each(formats)('plain lines of $name', ({ take, decoder, line }) => {
  it('say what the decoder says, damaged or not, or nothing', () => {
    const random = createRandom(31)
    let taken = 0
    for (let round = 0; round < 20_000; round++) {
      const bytes = latin1(line(random))
      if (random.unit() < 0.4) bytes[random.wholeBetween(0, bytes.length - 1)] = random.wholeBetween(11, 255)
      const plain = takeOne(take, bytes)
      if (plain === null) continue
      taken += 1
      expect(decoder.decode(bytes, 0, bytes.length)).toBe(true)
      expect(plain).toEqual([decoder.value, decoder.deviceTimeUs, decoder.sequence])
    }
    expect(taken).toBeGreaterThan(5000)
  })

  it('stop at the first that is not plain, and do not look behind the end', () => {
    const whole = latin1(`${line(createRandom(2))}\r\n`)
    const good = whole.length
    const bytes = Uint8Array.from([...whole, ...whole, ...latin1('  strange\n'), ...whole])
    const batch = createReadingBatch()
    expect(take(bytes, 0, bytes.length, batch)).toBe(2 * good)
    expect(batch.count).toBe(2)
    for (let cut = 1; cut < good; cut++) {
      // The end of a line cut short, then the rest of an older one that must not be read.
      const stale = whole.slice()
      stale[cut - 1] = 10
      const next = take(stale, 0, cut, createReadingBatch())
      expect(next === 0 || next === cut).toBe(true)
    }
  })

  it('fill a batch that is too small for them', () => {
    const text = `${line(createRandom(2))}\n`.repeat(700)
    const batch = createReadingBatch()
    expect(take(latin1(text), 0, text.length, batch)).toBe(text.length)
    expect(batch.count).toBe(700)
    expect(new Set(batch.values.subarray(0, 700)).size).toBe(1)
  })
})

describe('plain numbers', () => {
  it.each([
    ['-0', 0],
    ['+7', 7],
    ['007', 7],
    ['-999999999', -999_999_999],
  ])('reads %s', (text, value) => {
    expect(takeOne(takePlainNumbers, latin1(text))).toEqual([value, Number.NaN, Number.NaN])
  })

  it.each(['1234567890', '1.5', '1 N', '', '-', '1\r\r'])('leaves "%s" to the decoder', (text) => {
    expect(takeOne(takePlainNumbers, latin1(text))).toBeNull()
  })
})

describe('plain checked lines', () => {
  it('count to 2^32 - 1 and no further', () => {
    expect(takeOne(takePlainChecked, latin1(checkedLine('BL,4294967295,4294967295,-8388608')))).toEqual([
      -8_388_608, 4_294_967_295, 4_294_967_295,
    ])
    expect(takeOne(takePlainChecked, latin1(checkedLine('BL,4294967296,0,5')))).toBeNull()
    expect(takeOne(takePlainChecked, latin1(checkedLine('BL,0,99999999999,5')))).toBeNull()
  })
})
