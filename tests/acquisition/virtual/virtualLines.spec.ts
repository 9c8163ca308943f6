import { describe, expect, it } from 'vitest'
import { straightCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import { createLineEncoder } from '#acquisition/virtual/virtualLines.ts'
import type { LineFormatChoice } from '#contract/bench/source.ts'
import { readLines } from '#tests/fakes/streams/readLines.ts'

const samples = {
  timeUs: Float64Array.from([0, 12_500, 4294967296 + 500]),
  counts: Float64Array.from([-8123, 0, 48_313]),
  sequence: Float64Array.from([0, 7, 4294967296 + 3]),
}

function encode(lineFormat: LineFormatChoice, extra: { damagedShare?: number; lineEnd?: '\r\n' } = {}) {
  const encoder = createLineEncoder({ lineFormat, characteristic: straightCharacteristic, seed: 1, ...extra })
  encoder.add(samples, 3)
  return { encoder, bytes: encoder.take() }
}

const text = (bytes: Uint8Array) => String.fromCharCode(...bytes)

describe('lines of the virtual amplifier', () => {
  it('are numbers, after a line end that ends whatever stood before', () => {
    expect(text(encode({ name: 'number', columns: [] }).bytes)).toBe('\n-8123\n0\n48313\n')
  })

  it('are columns of any kind, their counters wrapping at 2^32', () => {
    const columns = encode({ name: 'columns', columns: ['time_us', 'seq', '-', 'time_ms', 'time_s', 'counts'] })
    expect(text(columns.bytes)).toBe(
      '\n0,0,0,0,0.000000,-8123\n12500,7,0,12,0.012500,0\n500,3,0,4294967,4294.967796,48313\n',
    )
    // (48313 - 48213) x 0.01 N, by hand.
    expect(text(encode({ name: 'columns', columns: ['force_N'] }).bytes).split('\n')[3]).toBe('1.00')
  })

  it('are checked lines that the parser accepts, with CRLF if asked for', () => {
    const { bytes } = encode({ name: 'checked', columns: [] }, { lineEnd: '\r\n' })
    // 42^4C=0E, ^2C=22 ... by hand: the worked example of lineParser.spec.ts with -8123 in place of 5.
    expect(text(bytes).split('\r\n')[1]).toMatch(/^\$BL,0,0,-8123\*[0-9A-F]{2}$/)
    const readings: number[][] = []
    readLines(
      { name: 'checked', columns: [] },
      (...reading) => readings.push(reading),
      (line) => expect(line).toBeNull(),
    ).push(bytes)
    expect(readings).toEqual([
      [-8123, 0, 0],
      [0, 12_500, 7],
      [48_313, 500, 3],
    ])
  })

  it('are lines with a CRC that the parser accepts', () => {
    const { bytes } = encode({ name: 'crc', columns: [] })
    // Python 3: binascii.crc_hqx(b'BC,0,0,-8123', 0xFFFF)
    expect(text(bytes).split('\n')[1]).toBe('$BC,0,0,-8123*5302')
    const readings: number[][] = []
    readLines({ name: 'crc', columns: [] }, (...reading) => readings.push(reading)).push(bytes)
    expect(readings).toEqual([
      [-8123, 0, 0],
      [0, 12_500, 7],
      [48_313, 500, 3],
    ])
  })

  it('are rejected by the parser exactly as often as they were damaged', () => {
    for (const lineFormat of [
      { name: 'number', columns: [] },
      { name: 'columns', columns: ['time_us', 'counts'] },
      { name: 'checked', columns: [] },
      { name: 'crc', columns: [] },
    ] satisfies LineFormatChoice[]) {
      const encoder = createLineEncoder({
        lineFormat,
        characteristic: straightCharacteristic,
        seed: 4,
        damagedShare: 0.3,
      })
      for (let i = 0; i < 500; i++) encoder.add(samples, 3)
      let read = 0
      let rejected = 0
      readLines(
        lineFormat,
        () => read++,
        () => rejected++,
      ).push(encoder.take())
      const { sent, damaged } = encoder.lines()
      expect(sent).toBe(1500)
      expect(damaged).toBeGreaterThan(300)
      expect(rejected).toBe(damaged)
      expect(read).toBe(sent - damaged)
    }
  })
})
