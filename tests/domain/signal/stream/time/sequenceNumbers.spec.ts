import { expect, it } from 'vitest'
import { createSequenceNumbers } from '#domain/signal/stream/time/sequenceNumbers.ts'

const passed = (...sent: readonly number[]) => sent.map(createSequenceNumbers().passed)

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

it('have restarted when eight in a row come from the past, or a million are lost at once', () => {
  const behind = Array.from({ length: 8 }, (_, i) => i)
  expect(passed(5000, ...behind, 8)).toEqual([1, ...Array(7).fill(-1), Number.NaN, 1])
  expect(passed(0, 1_000_000)).toEqual([1, 1_000_000])
  expect(passed(0, 1_000_001)).toEqual([1, -1])
  const numbers = createSequenceNumbers()
  for (const number of [5000, ...behind.slice(0, 7), 5001]) numbers.passed(number)
  expect(numbers.passed(0)).toBe(-1)
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
  for (let i = 0; i < 7; i++) numbers.passed(50 + i)
  numbers.forget()
  numbers.passed(100)
  expect(numbers.passed(50)).toBe(-1)
})
