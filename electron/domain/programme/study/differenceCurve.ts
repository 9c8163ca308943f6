import { detectableDifference, type PlannedTest } from '../sampleSize.ts'

/** Blocks a group, and the smallest difference that they find in percent of the mean. */
export type CurvePoint = { blocks: number; differencePercent: number }

/** From which number of blocks a curve begins: two can differ by anything, and their difference would flatten the rest. */
const fewest = 3

/**
 * The smallest difference over the blocks a group, from 3 to `most`, for spreads in percent of the mean. Numbers of blocks
 * where even an absurd difference is not found are left out.
 * Source: detectableDifference for each. Checked: tests/domain/programme/study/differenceCurve.spec.ts against R power.t.test.
 */
export function differenceCurve(test: PlannedTest, power: number, cvPercent: number, most: number): CurvePoint[] {
  const points: CurvePoint[] = []
  for (let blocks = fewest; blocks <= most; blocks++) {
    const found = detectableDifference(test, blocks, power)
    if (found !== null) points.push({ blocks, differencePercent: found * cvPercent })
  }
  return points
}
