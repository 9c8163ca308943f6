import { expect, test } from 'vitest'
import type { CheckWeightReading } from '#contract/calibration/checkWeight.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { checkHistories } from '#engine/calibration/checkWeight/checkHistory.ts'
import { madeCalibration } from '../../../archive/storedCalibration.ts'

const rows = [1, 2, 3].flatMap((run) =>
  [0, 100, 200, 300].map(
    (forceN, i): CalibrationRow => ({
      run,
      direction: 'up',
      forceN,
      reading: 100 * forceN + [9, -9, 4, -4][(i + run) % 4]!,
    }),
  ),
)
const calibration = { calibrationId: 1, ...madeCalibration({ rows, assessment: calibrationOf(rows, { degree: 1 }) }) }
const checks = (deviations: number[], weight = '20 kg'): CheckWeightReading[] =>
  deviations.map((deviationN, index) => ({
    checkId: index + 1,
    calibrationId: 1,
    takenAt: '2031-05-02T09:30:00.000Z',
    by: 'bench',
    weight,
    expectedN: 200,
    indicatedN: 200 + deviationN,
    sdN: 0.01,
    count: 160,
  }))

// Mean 0; moving ranges 2, 2, 2, ... of a saw of 1: the limits are 0 +- 3 x 2 / 1.128 = 5.319 (e-Handbook 6.3.2.2).
const saw = [1, -1, 1, -1, 1, -1, 1, -1]

test('charts the deviations of one weight with limits from the first eight', () => {
  const [history] = checkHistories(calibration, checks([...saw, 0.5]))
  expect(history!.individuals).toMatchObject({
    centre: 0,
    meanMovingRange: 2,
    lower: expect.closeTo(-5.3191, 4),
    upper: expect.closeTo(5.3191, 4),
    movingRangeUpper: expect.closeTo(6.534, 9),
  })
  expect(history!.individuals!.movingRanges).toHaveLength(8)
  expect(history!.ewma!.smoothed[0]).toBeCloseTo(0.3 * 0.5, 9)
  expect(history!.verdict.standing).toBe('in-control')
})

test('says stop, and what to do, when a check lies outside its limits', () => {
  const [history] = checkHistories(calibration, checks([...saw, 6]))
  expect(history!.verdict).toMatchObject({ standing: 'outside', finding: 'beyond-limits' })
})

test('judges the first checks by the uncertainty of the calibration', () => {
  const judged = (deviationN: number) => checkHistories(calibration, checks([deviationN]))[0]!
  expect(judged(0)).toMatchObject({ verdict: { standing: 'too-few' }, individuals: null, ewma: null })
  expect(judged(1.9).verdict.standing).toBe('outside')
})

test('keeps the weights apart', () => {
  const histories = checkHistories(calibration, [...checks([0, 1]), ...checks([0], '10 kg')])
  expect(histories.map(({ weight, checks: of }) => [weight, of.length])).toEqual([
    ['20 kg', 2],
    ['10 kg', 1],
  ])
  expect(checkHistories(calibration, [])).toEqual([])
})
