import { expect, it } from 'vitest'
import { createSequenceNumbers } from '#domain/signal/stream/time/sequenceNumbers.ts'

function passed(...sent: readonly number[]) {
  const numbers = createSequenceNumbers()
  return sent.map((number) => numbers.passed(number))
}

// Serial number arithmetic as RFC 1982 describes it for 32 bits: what is just behind is old, across the wrap too.
it.each([
  ['go up by one', [5, 6, 7], [1, 1, 1]],
  ['leave some out', [5, 9], [1, 4]],
  ['wrap around', [2 ** 32 - 1, 0, 2], [1, 1, 2]],
  ['come twice', [5, 5, 6], [1, 0, 1]],
  ['come too late', [5, 4, 6], [1, -1, 1]],
  ['are not there', [Number.NaN, Number.NaN, 3, 5], [1, 1, 1, 2]],
] as [string, number[], number[]][])('numbers that %s', (_which, sent, expected) => {
  expect(passed(...sent)).toEqual(expected)
})

it('have restarted when two from the past follow each other, or from more than a million ahead', () => {
  expect(passed(5000, 4100, 4101, 4102)).toEqual([1, -1, Number.NaN, 1])
  expect(passed(5000, 4100, 4102, 4103)).toEqual([1, -1, -1, Number.NaN])
  expect(passed(5000, 4100, 4099, 4098, 5001)).toEqual([1, -1, -1, -1, 1])
  expect(passed(0, 1_000_000)).toEqual([1, 1_000_000])
  expect(passed(0, 1_000_001, 1_000_002)).toEqual([1, -1, Number.NaN])
  // One alone is forgotten by the next that counts.
  expect(passed(5000, 4100, 5001, 4101, 4102)).toEqual([1, -1, 1, -1, Number.NaN])
})

it('have restarted at once below a hundred, a thousand and more behind, so that no reading is lost', () => {
  expect(passed(5000, 0, 1)).toEqual([1, Number.NaN, 1])
  expect(passed(1099, 99, 100)).toEqual([1, Number.NaN, 1])
  expect(passed(1100, 100)).toEqual([1, -1])
  expect(passed(1098, 99)).toEqual([1, -1])
})

it('have restarted wherever they stand when time shows it', () => {
  const numbers = createSequenceNumbers()
  expect([numbers.passed(500), numbers.passed(400, true), numbers.passed(401)]).toEqual([1, Number.NaN, 1])
  expect(numbers.passed(Number.NaN, true)).toBe(1)
})

it('go on where a counter of 8, 16 or 24 bits ends', () => {
  for (const bits of [8, 16, 24]) {
    expect(passed(2 ** bits - 2, 2 ** bits - 1, 0, 1)).toEqual([1, 1, 1, 1])
    expect(passed(2 ** bits - 2, 2 ** bits - 1, 200)[2]).not.toBe(1)
  }
  expect(passed(126, 127, 0)).toEqual([1, 1, -1])
})

it('may be any after they were forgotten', () => {
  const numbers = createSequenceNumbers()
  numbers.passed(5000)
  numbers.forget()
  expect([numbers.passed(3), numbers.passed(4)]).toEqual([1, 1])
})

it('go on from a reading without a number, and count what is far behind as a loss of none', () => {
  expect(passed(5, Number.NaN, 900)).toEqual([1, 1, 1])
  expect(passed(0, 2 ** 31 + 5)).toEqual([1, -1])
  const numbers = createSequenceNumbers()
  numbers.passed(100)
  numbers.passed(50)
  numbers.forget()
  numbers.passed(100)
  expect(numbers.passed(51)).toBe(-1)
})
