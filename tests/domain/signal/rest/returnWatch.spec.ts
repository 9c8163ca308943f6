import { expect, it } from 'vitest'
import { createReturnWatch } from '#domain/signal/rest/returnWatch.ts'

/** What the watch says of rises from levels at rest up to forces, one after the other; the threshold is 10. */
function said(rises: readonly [level: number, force: number][]): boolean[] {
  const returns = createReturnWatch()
  return rises.map(([level, force]) => returns.isReturn(force, { threshold: () => 10, level: () => level }))
}

// What hangs on the cell pulls its zero down; three thresholds are fifteen noise SDs and more, which no drift is.
it.each([
  ['from more than three thresholds below zero up to zero', [[-30.1, 10]], [true]],
  ['from three thresholds below zero', [[-30, 10]], [false]],
  ['that goes on above the threshold', [[-100, 10.1]], [false]],
  ['from zero', [[0, 5]], [false]],
] as [string, [number, number][], boolean[]][])('a rise %s', (_which, rises, expected) => {
  expect(said(rises)).toEqual(expected)
})

it('a slow return in several rises is one to its end, also from near zero', () => {
  expect(
    said([
      [-100, -40],
      [-40, -11],
      [-10.1, 2],
    ]),
  ).toEqual([true, true, true])
  expect(
    said([
      [-100, -40],
      [-10, 2],
      [-20, 2],
    ]),
  ).toEqual([true, false, false])
})

it('forgets that something came back', () => {
  const returns = createReturnWatch()
  const watch = { threshold: () => 10, level: () => -20 }
  expect(returns.isReturn(0, { ...watch, level: () => -50 })).toBe(true)
  returns.forget()
  expect(returns.isReturn(0, watch)).toBe(false)
})
