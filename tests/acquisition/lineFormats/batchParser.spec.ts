import { expect, it } from 'vitest'
import { createBatchParser } from '#acquisition/lineFormats/batchParser.ts'
import { createReadingBatch } from '#acquisition/readingBatch.ts'
import type { LineFormatChoice } from '#contract/bench/source.ts'
import { createRandom } from '#domain/numbers/random.ts'

const latin1 = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0))

function parse(choice: LineFormatChoice, chunks: readonly Uint8Array[]) {
  const batch = createReadingBatch()
  const rejected: string[] = []
  const parser = createBatchParser(choice, batch, (line) => rejected.push(String.fromCharCode(...line)))
  for (const chunk of chunks) parser.push(chunk)
  const { count } = batch
  const readings = [batch.values, batch.deviceTimeUs, batch.sequence].map((array) => [...array.subarray(0, count)])
  return { parser, readings, rejected }
}

/** "$BL,0,0,5*17" and its like, with the check value of NMEA 0183. */
function checkedLine(sequence: number, timeUs: number, counts: number): string {
  const body = `BL,${sequence},${timeUs},${counts}`
  const sum = [...body].reduce((so, letter) => so ^ letter.charCodeAt(0), 0)
  return `$${body}*${sum.toString(16).padStart(2, '0')}`
}

const streams: [LineFormatChoice, (i: number) => string, number][] = [
  [{ name: 'number', columns: [] }, (i) => `${i * 37 - 5000}`, 0],
  [{ name: 'columns', columns: ['time_us', 'counts'] }, (i) => `${i * 100},${i - 300}`, 1],
  [{ name: 'checked', columns: [] }, (i) => checkedLine(i, i * 100, i * 37 - 5000), 2],
]

it.each(streams)('a stream of $name gives the same batch wherever it is cut, damaged lines and all', (choice, line) => {
  const random = createRandom(41)
  const lines = Array.from({ length: 600 }, (_, i) => {
    const draw = random.unit()
    const damaged = draw < 0.05 ? line(i).slice(0, -2) : draw < 0.1 ? `?${line(i)}` : line(i)
    return draw > 0.98 ? '7'.repeat(random.wholeBetween(250, 600)) : damaged
  })
  const stream = latin1(`half\n${lines.join('\n')}\r\n`)
  const whole = parse(choice, [stream])
  expect(whole.readings[0]!.length).toBeGreaterThan(500)
  expect(whole.rejected.length).toBeGreaterThan(20)
  for (let round = 0; round < 60; round++) {
    const longest = [1, 3, 20, 64, 5000][round % 5]!
    const chunks: Uint8Array[] = []
    for (let at = 0; at < stream.length; ) {
      const length = random.wholeBetween(0, longest)
      chunks.push(stream.slice(at, at + length))
      at += length
    }
    const cut = parse(choice, chunks)
    expect(cut.readings).toEqual(whole.readings)
    expect(cut.rejected).toEqual(whole.rejected)
  }
})

it('knows the unit from plain lines and takes no other after them', () => {
  const { parser, readings, rejected } = parse({ name: 'number', columns: [] }, [latin1('half\n1\n2\n3 N\n4\n')])
  expect(parser.unit()).toBe('counts')
  expect(readings[0]).toEqual([1, 2, 4])
  expect(rejected).toEqual(['3 N'])
})

it('takes no plain number for counts when the device names a unit', () => {
  const { parser, readings, rejected } = parse({ name: 'number', columns: [] }, [latin1('half\n1 kN\n2\n3 kN\n')])
  expect(parser.unit()).toBe('kN')
  expect(readings[0]).toEqual([1, 3])
  expect(rejected).toEqual(['2'])
})
