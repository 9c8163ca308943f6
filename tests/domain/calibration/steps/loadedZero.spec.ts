import { expect, test } from 'vitest'
import { loadedZero, looksLoaded } from '#domain/calibration/steps/loadedZero.ts'

test('a zero off by more than half of the lightest load is questioned, either way', () => {
  // A 10 kg weight weighs 98 N: the zero was read with it on, or with half of it less than before.
  expect(looksLoaded(98, 98)).toBe(true)
  expect(looksLoaded(-60, 98)).toBe(true)
  expect(looksLoaded(12, 98)).toBe(false)
  expect([49, 49.001].map((seenN) => looksLoaded(seenN, 98))).toEqual([false, true])
  expect(looksLoaded(null, 98)).toBe(false)
})

test('the question says what to do if it was so', () => {
  expect(loadedZero('Repeat the step.')).toMatchObject({ code: 'conflict', hint: 'Repeat the step.' })
})
