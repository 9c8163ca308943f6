import { afterEach, beforeEach, expect, test } from 'vitest'
import { curvedCharacteristic, readingCounts } from '#acquisition/virtual/transferCharacteristic.ts'
import { polynomialAt } from '#domain/calibration/fit/polynomial.ts'
import { calibrateDemo } from '#engine/calibration/demoCalibration.ts'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
beforeEach(async () => {
  home = await temporaryArchive()
})
afterEach(() => home.remove())

const at = Date.UTC(2025, 8, 14)

test('finds the virtual cell within 0.2 % of what it is made to be, over all that a block of the demo bears', async () => {
  const calibration = (await calibrateDemo(home.archive, 'bench', at))!
  expect(calibration).toMatchObject({ device: 'virtual', readingUnit: 'counts' })
  const { coefficients, verifiedRangeN } = calibration.assessment.result
  expect(verifiedRangeN![1]).toBeGreaterThan(9000)
  const zero = polynomialAt(coefficients, readingCounts(curvedCharacteristic, 0, 0))
  for (const forceN of [2000, 4500, 7000, 9000]) {
    const found = polynomialAt(coefficients, readingCounts(curvedCharacteristic, forceN, forceN)) - zero
    expect(Math.abs(found / forceN - 1)).toBeLessThan(0.002)
  }
})

test('puts it in force, and calibrates no second time', async () => {
  const first = await calibrateDemo(home.archive, 'bench', at)
  expect((await home.archive.calibrationDecisions()).rows.at(-1)).toMatchObject({ calibrationId: first!.calibrationId })
  expect((await calibrateDemo(home.archive, 'bench', at))?.calibrationId).toBe(first!.calibrationId)
  expect((await home.archive.calibrations()).rows).toHaveLength(1)
})
