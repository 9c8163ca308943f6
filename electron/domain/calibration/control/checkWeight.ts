import type { CheckVerdict } from '#contract/calibration/checkWeight.ts'
import { ewmaChart } from './ewmaChart.ts'
import { individualsChart } from './individualsChart.ts'

/** How many checks set the limits; later ones are judged by them. */
export const baselineChecks = 8
/** So many checks in a row on one side of the centre are no chance (0.4 %). */
export const runLength = 8

/**
 * Word on the newest reading of a check weight, from the deviations of all of them under one calibration, oldest first, N.
 *
 *   limits: individuals chart of the first 8; outside one is action. 8 in a row on one side, or an average
 *   (EWMA, weight 0.3) outside its own limits, is a warning of drift.
 *
 * Before there are 8, the deviation is compared with `allowedN`, the expanded uncertainty there. `leastSpreadN`, the resolution,
 * keeps limits from closing to nothing when the first checks agree to the digit.
 * Throws RangeError without a deviation, or for an allowance or spread that is negative.
 * Source: NIST/SEMATECH e-Handbook 6.3.2 and 6.3.2.4; runs of eight: fourth of the Western
 * Electric rules (Statistical Quality Control Handbook, 1956), as textbooks on control charts have it.
 * Checked: tests/domain/calibration/control/checkWeight.spec.ts.
 */
export function checkWeightVerdict(deviationsN: readonly number[], allowedN: number, leastSpreadN = 0): CheckVerdict {
  const newest = deviationsN.at(-1)
  if (newest === undefined) throw new RangeError('checkWeightVerdict requires at least one deviation')
  if (!(allowedN >= 0 && leastSpreadN >= 0)) throw new RangeError('checkWeightVerdict requires limits of 0 or more')
  const common = { deviationN: newest, allowedN, checksMissing: Math.max(baselineChecks - deviationsN.length, 0) }
  if (deviationsN.length <= baselineChecks) {
    const limits = { lowerN: -allowedN, upperN: allowedN }
    return Math.abs(newest) > allowedN
      ? { standing: 'outside', finding: 'beyond-uncertainty', ...common, ...limits }
      : { standing: 'too-few', finding: 'within-uncertainty', ...common, ...limits }
  }
  const chart = individualsChart(deviationsN.slice(0, baselineChecks))
  const sd = Math.max((chart.upper - chart.centre) / 3, leastSpreadN)
  const limits = { lowerN: chart.centre - 3 * sd, upperN: chart.centre + 3 * sd }
  if (newest < limits.lowerN || newest > limits.upperN)
    return { standing: 'outside', finding: 'beyond-limits', ...common, ...limits }
  const later = deviationsN.slice(baselineChecks)
  const average = ewmaChart(later, chart.centre, sd)
  const smoothed = average.smoothed.at(-1)!
  if (smoothed < average.lower || smoothed > average.upper)
    return { standing: 'watch', finding: 'drift', ...common, ...limits }
  const last = later.slice(-runLength)
  const sides = new Set(last.map((value) => Math.sign(value - chart.centre)))
  if (last.length === runLength && sides.size === 1 && !sides.has(0))
    return { standing: 'watch', finding: 'one-sided', ...common, ...limits }
  return { standing: 'in-control', finding: 'as-it-should', ...common, ...limits }
}
