import { expect, test } from 'vitest'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { runningFit } from '#domain/calibration/fit/runningFit.ts'
import { pontius } from './fixtures/pontius.ts'

const up = (pairs: readonly (readonly [number, number])[]): CalibrationRow[] =>
  pairs.map(([forceN, reading]) => ({ run: 1, direction: 'up', forceN, reading }))

test('is the certified parabola of NIST StRD Pontius when all of its points are there', () => {
  const fit = runningFit(up(pontius))!
  for (const load of [150_000, 1_500_000, 3_000_000]) {
    const certified = 0.673565789473684e-3 + 0.732059160401003e-6 * load - 0.316081871345029e-14 * load ** 2
    expect(fit(load)).toBeCloseTo(certified, 10)
  }
})

test('is the line through two points, and through none while there are fewer', () => {
  expect(runningFit([])).toBeNull()
  expect(runningFit(up([[0, 10]]))).toBeNull()
  expect(
    runningFit(
      up([
        [0, 10],
        [0, 12],
      ]),
    ),
  ).toBeNull()
  expect(
    runningFit(
      up([
        [0, 10],
        [100, 60],
      ]),
    )!(35),
  ).toBeCloseTo(50, 12)
})

test('leaves falling load out', () => {
  const rows = [
    ...up([
      [0, 10],
      [100, 60],
    ]),
    { run: 1, direction: 'down' as const, forceN: 0, reading: 30 },
  ]
  expect(runningFit(rows)!(60)).toBeCloseTo(100, 12)
})

test('is straight through four loads and bent through five', () => {
  const squares = (count: number) => up(Array.from({ length: count }, (_, reading) => [reading ** 2, reading]))
  // The least-squares line through (0, 0), (1, 1), (2, 4), (3, 9) is 3 r − 1, by hand.
  expect(runningFit(squares(4))!(10)).toBeCloseTo(29, 10)
  expect(runningFit(squares(5))!(10)).toBeCloseTo(100, 8)
})
