import { describe, expect, it } from 'vitest'
import { createLineParser, longestLine } from '#acquisition/lineFormats/lineParser.ts'
import { createReadingBatch } from '#acquisition/readingBatch.ts'
import type { LineFormatChoice } from '#contract/bench/source.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { readLines } from '#tests/fakes/streams/readLines.ts'

const latin1 = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0))
const number: LineFormatChoice = { name: 'number', columns: [] }
const checked: LineFormatChoice = { name: 'checked', columns: [] }
const crc: LineFormatChoice = { name: 'crc', columns: [] }
const columns = (...names: LineFormatChoice['columns']): LineFormatChoice => ({ name: 'columns', columns: names })

function parse(choice: LineFormatChoice, chunks: readonly Uint8Array[], startsAtLine = true) {
  const readings: number[][] = []
  const rejected: string[] = []
  const parser = readLines(
    choice,
    (value, timeUs, sequence) => readings.push([value, timeUs, sequence]),
    (line) => rejected.push(String.fromCharCode(...line)),
    { startsAtLine },
  )
  for (const chunk of chunks) parser.push(chunk)
  return { parser, readings, rejected }
}

const values = (choice: LineFormatChoice, text: string) => {
  const { readings, rejected } = parse(choice, [latin1(text)])
  return { values: readings.map(([value]) => value), rejected }
}

describe('a stream of numbers', () => {
  it('reads sign, leading zeros, decimals, exponents and blanks', () => {
    expect(values(number, '-12345\n+000.123\r\n  12.5 \n-   7.5\n1.5e3\n')).toEqual({
      values: [-12345, 0.123, 12.5, -7.5, 1500],
      rejected: [],
    })
  })

  it.each(['N', 'kN', 'lbf', 'kgf', 'kg', 'g'] as const)(
    'knows the unit %s, with and without a blank before it',
    (unit) => {
      const { parser, readings } = parse(number, [latin1(`1.5 ${unit}\n2.5${unit}\r\n`)])
      expect(readings.map(([value]) => value)).toEqual([1.5, 2.5])
      expect(parser.unit()).toBe(unit)
    },
  )

  it('rejects what is no number or has an unknown unit, and keeps the bytes', () => {
    const lines = ['12,5', 'N', '12.5 n', '12.5 pound', '1 2', '0x1F', '12.5.1', '- -5', 'hello', '12 N N']
    expect(values(number, `${lines.join('\n')}\n`)).toEqual({ values: [], rejected: lines })
  })

  it('counts are the unit when none is named, and another unit later is rejected', () => {
    const { parser, readings, rejected } = parse(number, [latin1('1\n2 N\n3\n')])
    expect(parser.unit()).toBe('counts')
    expect(readings.map(([value]) => value)).toEqual([1, 3])
    expect(rejected).toEqual(['2 N'])
  })

  it('has no unit before the first reading', () => {
    expect(parse(number, [latin1('hello\n')]).parser.unit()).toBeNull()
  })
})

describe('a unit that changes', () => {
  it('does so with the third line of another in a row, so that one early line turns no other away', () => {
    const { parser, readings, rejected } = parse(number, [latin1('5 g\n'), latin1('12\n13\n'), latin1('14\n15\n')])
    expect(readings.map(([value]) => value)).toEqual([5, 14, 15])
    expect(rejected).toEqual(['12', '13'])
    expect(parser.unit()).toBe('counts')
  })

  it('waits until the readings of the old one are taken, and then goes on with the same line', () => {
    expect(values(number, '5 g\n12\n13\n14\n15\n')).toEqual({ values: [5, 14, 15], rejected: ['12', '13'] })
    const batch = createReadingBatch()
    const parser = createLineParser(number, batch, () => {}, { startsAtLine: true })
    const chunk = latin1('5 g\n12\n13\n14\n15\n16')
    expect([parser.push(chunk), batch.count, parser.unit()]).toEqual([10, 1, 'g'])
    batch.clear()
    expect([parser.push(chunk.subarray(10)), batch.count, parser.unit()]).toEqual([8, 2, 'counts'])
  })

  it('is one in a row of one unit alone', () => {
    expect(values(number, '1 N\n2 g\n3 g\n4 N\n5 g\n6 g\n7 N\n').values).toEqual([1, 4, 7])
    expect(values(number, '1 N\n2 g\n3 kg\n4 g\n5 kg\n').values).toEqual([1])
    expect(values(number, '1 N\n2 g\n3 kg\n4 kg\n5 kg\n').values).toEqual([1, 5])
  })

  it('begins anew after the stream was cut', () => {
    const { parser, readings } = parse(number, [latin1('1 N\n2 g\n3 g\n')])
    parser.restart()
    parser.push(latin1('cut\n4 N\n5 g\n6 N\n'))
    expect(readings.map(([value]) => value)).toEqual([1, 4, 6])
    expect(parser.unit()).toBe('N')
  })
})

describe('a stream of columns', () => {
  it.each([',', ';', '\t', ' ', ', ', ' ; ', '   '])('splits at "%s"', (delimiter) => {
    const line = ['1234567', '-8123'].join(delimiter)
    expect(parse(columns('time_us', 'counts'), [latin1(`${line}\r\n`)]).readings).toEqual([
      [-8123, 1234567, Number.NaN],
    ])
  })

  it('brings times to microseconds and takes sequence, skipped columns and newtons', () => {
    const { parser, readings } = parse(columns('seq', 'time_ms', '-', 'force_N'), [
      latin1('7,1.5,any-thing,12.25\n8,2.5,,13\n'),
    ])
    expect(readings).toEqual([
      [12.25, 1500, 7],
      [13, 2500, 8],
    ])
    expect(parser.unit()).toBe('N')
    expect(parse(columns('time_s', 'counts'), [latin1('0.25 9\n')]).readings).toEqual([[9, 250_000, Number.NaN]])
  })

  it('says when device times start again at zero', () => {
    const wrap = (choice: LineFormatChoice) => parse(choice, []).parser.timeWrapsAtUs
    expect(wrap(columns('time_us', 'counts'))).toBe(4294967296)
    expect(wrap(columns('time_ms', 'counts'))).toBe(4294967296000)
    expect(wrap(columns('time_s', 'counts'))).toBeNull()
    expect(wrap(number)).toBeNull()
    expect(wrap(checked)).toBe(4294967296)
  })

  it('rejects too few, too many and empty fields and a sequence that is no counter', () => {
    const lines = ['1', '1,2,3', '1,', ',2', '1,,2', '1 x', '1,2,']
    expect(values(columns('time_us', 'counts'), `${lines.join('\n')}\n`)).toEqual({ values: [], rejected: lines })
    expect(values(columns('seq', 'counts'), '-1,5\n1.5,5\n').values).toEqual([])
  })

  it.each([
    [['time_us']],
    [['counts', 'force_N']],
    [['time_us', 'time_ms', 'counts']],
    [[]],
  ] as LineFormatChoice['columns'][][])('refuses columns %s in one clear sentence', (names) => {
    expect(() => parse(columns(...names), [])).toThrow(/do not say which one is the reading/)
  })
})

describe('a stream of checked lines', () => {
  // By hand, byte by byte: 42^4C=0E ^2C=22 ^30=12 ^2C=3E ^30=0E ^2C=22 ^35=17 (hexadecimal; B L , 0 , 0 , 5).
  const good = '$BL,0,0,5*17'

  it('takes sequence, microseconds and counts', () => {
    expect(parse(checked, [latin1(`${good}\r\n`)]).readings).toEqual([[5, 0, 0]])
  })

  it('accepts the check value in small letters', () => {
    expect(parse(checked, [latin1('$BL,0,0,-5*3A\n$BL,0,0,-5*3a\n')]).readings).toHaveLength(2)
  })

  it('rejects every line in which one byte was changed', () => {
    let accepted = 0
    for (let i = 0; i < good.length; i++)
      for (let byte = 0; byte < 256; byte++) {
        const line = latin1(`${good}\n`)
        if (line[i] === byte || byte === 10) continue
        line[i] = byte
        const { readings, rejected } = parse(checked, [line])
        accepted += readings.length
        expect(rejected).toHaveLength(1)
      }
    expect(accepted).toBe(0)
  })

  it.each(['', '$', '$BL', '$BL,*00', '$BL,1,2*00', '$BL,0,0,5', '$BL,0,0,5*', '$BL,0,0,5*1', '$BL,0,0,5*17 '])(
    'rejects the stump "%s"',
    (line) => {
      expect(parse(checked, [latin1(`${line}\n`)]).readings).toEqual([])
    },
  )
})

describe('framing', () => {
  it('gives the same readings and rejections wherever the stream is cut', () => {
    const random = createRandom(17)
    const pieces: string[] = []
    for (let i = 0; i < 400; i++) {
      const draw = random.unit()
      if (draw < 0.7) pieces.push(`${random.wholeBetween(-9e6, 9e6)}`)
      else if (draw < 0.8) pieces.push(`${random.between(-10, 10).toFixed(3)} N`)
      else if (draw < 0.9)
        pieces.push(String.fromCharCode(...Array.from({ length: 9 }, () => random.wholeBetween(0, 255))))
      else if (draw < 0.95) pieces.push('x'.repeat(random.wholeBetween(200, 900)))
      else pieces.push('')
      pieces.push(random.unit() < 0.5 ? '\n' : '\r\n')
    }
    const stream = latin1(pieces.join(''))
    const whole = parse(number, [stream], false)
    expect(whole.readings.length).toBeGreaterThan(200)
    expect(whole.rejected.length).toBeGreaterThan(30)
    for (let round = 0; round < 60; round++) {
      const longest = [1, 3, 20, 300, 5000][round % 5]!
      const chunks: Uint8Array[] = []
      for (let at = 0; at < stream.length; ) {
        const length = random.wholeBetween(0, longest)
        chunks.push(stream.slice(at, at + length))
        at += length
      }
      const cut = parse(number, chunks, false)
      expect(cut.readings).toEqual(whole.readings)
      expect(cut.rejected).toEqual(whole.rejected)
    }
  })

  it('never throws on noise, whatever the format, and finds its feet at the next line end', () => {
    const random = createRandom(23)
    const tail: [LineFormatChoice, string][] = [
      [number, '42'],
      [columns('time_us', 'counts'), '1,42'],
      [checked, '$BL,0,0,5*17'],
      [crc, '$BC,0,0,5*E787'],
    ]
    for (const [choice, line] of tail)
      for (let round = 0; round < 200; round++) {
        const noise = Uint8Array.from({ length: random.wholeBetween(0, 700) }, () => random.wholeBetween(0, 255))
        const { readings } = parse(choice, [noise, latin1(`\n${line}\n`)])
        expect(readings.at(-1)?.[0]).toBe(line.startsWith('$') ? 5 : 42)
      }
  })

  it('rejects an over-long line once, whole or in pieces, and goes on with the next', () => {
    const long = '7'.repeat(longestLine + 1)
    for (const chunks of [[`${long}\n5\n`], [long, long, '\n5\n'], [...`${long}\n5\n`]]) {
      const { readings, rejected } = parse(number, chunks.map(latin1))
      expect(readings.map(([value]) => value)).toEqual([5])
      expect(rejected).toEqual(['7'.repeat(longestLine)])
    }
  })

  it('takes a line of just the longest length, also when its line end comes in another chunk', () => {
    const line = `${'0'.repeat(longestLine - 1)}5`
    for (const chunks of [[`${line}\r\n`], [line, '\r', '\n'], [`${line}\r`, '\n'], [`${line}\n`]])
      expect(parse(number, chunks.map(latin1))).toMatchObject({ readings: [[5, Number.NaN, Number.NaN]], rejected: [] })
  })

  it('leaves out the first line after opening, which may be cut, without counting it', () => {
    expect(parse(number, [latin1('345\n12346\n')], false)).toMatchObject({
      readings: [[12346, Number.NaN, Number.NaN]],
      rejected: [],
    })
    expect(parse(checked, [latin1('0,5*17\n$BL,0,0,5*17\n')], false)).toMatchObject({
      readings: [[5, 0, 0]],
      rejected: [],
    })
  })

  it('forgets half a line and the unit when the stream was cut', () => {
    const { parser, readings, rejected } = parse(number, [latin1('1\n2\n3')])
    parser.restart()
    parser.push(latin1('45\n6 N\n'))
    expect(readings.map(([value]) => value)).toEqual([1, 2, 6])
    expect(rejected).toEqual([])
    expect(parser.unit()).toBe('N')
  })
})

/** "$BL,0,0,5*17" and its like, with the check value of NMEA 0183. */
function checkedLine(sequence: number, timeUs: number, counts: number): string {
  const body = `BL,${sequence},${timeUs},${counts}`
  const sum = [...body].reduce((so, letter) => so ^ letter.charCodeAt(0), 0)
  return `$${body}*${sum.toString(16).padStart(2, '0')}`
}

/** "$BC,0,0,5*E787" and its like: the check value bit by bit, as the definition of CRC-16/CCITT-FALSE has it. */
function crcLine(sequence: number, timeUs: number, counts: number): string {
  const body = `BC,${sequence},${timeUs},${counts}`
  let register = 0xffff
  for (const byte of latin1(body))
    for (let bit = 7; bit >= 0; bit--) {
      const out = (register >> 15) ^ ((byte >> bit) & 1)
      register = ((register << 1) & 0xffff) ^ (out === 1 ? 0x1021 : 0)
    }
  return `$${body}*${register.toString(16).padStart(4, '0')}`
}

const streams: [LineFormatChoice, (i: number) => string, number][] = [
  [{ name: 'number', columns: [] }, (i) => `${i * 37 - 5000}`, 0],
  [{ name: 'columns', columns: ['time_us', 'counts'] }, (i) => `${i * 100},${i - 300}`, 1],
  [{ name: 'checked', columns: [] }, (i) => checkedLine(i, i * 100, i * 37 - 5000), 2],
  [{ name: 'crc', columns: [] }, (i) => crcLine(i, i * 100, i * 37 - 5000), 2],
]

it.each(streams)('a stream of $name gives the same batch wherever it is cut, damaged lines and all', (choice, line) => {
  const random = createRandom(41)
  const lines = Array.from({ length: 600 }, (_, i) => {
    const draw = random.unit()
    const damaged = draw < 0.05 ? line(i).slice(0, -2) : draw < 0.1 ? `?${line(i)}` : line(i)
    return draw > 0.98 ? '7'.repeat(random.wholeBetween(250, 600)) : damaged
  })
  const stream = latin1(`half\n${lines.join('\n')}\r\n`)
  const whole = parse(choice, [stream], false)
  expect(whole.readings.length).toBeGreaterThan(500)
  expect(whole.rejected.length).toBeGreaterThan(20)
  for (let round = 0; round < 60; round++) {
    const longest = [1, 3, 20, 64, 5000][round % 5]!
    const chunks: Uint8Array[] = []
    for (let at = 0; at < stream.length; ) {
      const length = random.wholeBetween(0, longest)
      chunks.push(stream.slice(at, at + length))
      at += length
    }
    const cut = parse(choice, chunks, false)
    expect(cut.readings).toEqual(whole.readings)
    expect(cut.rejected).toEqual(whole.rejected)
  }
})

it('takes no plain number for counts when the device names a unit', () => {
  const { parser, readings, rejected } = parse(number, [latin1('1 kN\n2\n3 kN\n')])
  expect(parser.unit()).toBe('kN')
  expect(readings.map(([value]) => value)).toEqual([1, 3])
  expect(rejected).toEqual(['2'])
})

it.each([
  ['-0', 0],
  ['+7', 7],
  ['007', 7],
  ['-999999999', -999_999_999],
  ['12345678901', 12_345_678_901],
])('reads the number %s', (text, value) => {
  expect(values(number, `${text}\n`)).toEqual({ values: [value], rejected: [] })
})

it.each([
  [number, '9007199254740993'],
  [number, '-9007199254740993 N'],
  [columns('time_us', 'counts'), '5,9007199254740993'],
  [columns('time_us', 'counts'), '9007199254740993,5'],
  [columns('time_ms', 'counts'), '9007199254741,5'],
  [columns('seq', 'counts'), '9007199254740993,5'],
  [columns('force_N'), '9007199254740993'],
  [checked, checkedLine(0, 0, 9007199254740993n as unknown as number)],
  [crc, crcLine(0, 0, 9007199254740993n as unknown as number)],
])('rejects a number beyond 2^53, which would be rounded: $0.name, %s', (choice, line) => {
  expect(values(choice, `${line}\n`)).toEqual({ values: [], rejected: [line] })
})

it.each(['-', '1\r\r5', '+', '--1'])('rejects "%s"', (text) => {
  expect(values(number, `${text}\n`)).toEqual({ values: [], rejected: [text] })
})

it('takes counters of a checked line up to 2^32 - 1 and no further', () => {
  const line = (sequence: number, timeUs: number) => latin1(`${checkedLine(sequence, timeUs, -8_388_608)}\n`)
  const { readings, rejected } = parse(checked, [
    line(4_294_967_295, 4_294_967_295),
    line(4_294_967_296, 0),
    line(0, 99_999_999_999),
  ])
  expect(readings).toEqual([[-8_388_608, 4_294_967_295, 4_294_967_295]])
  expect(rejected.length).toBe(2)
})
