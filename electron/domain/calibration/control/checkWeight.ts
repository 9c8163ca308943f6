import { ewmaChart } from './ewmaChart.ts'
import { individualsChart } from './individualsChart.ts'

/** How many checks set the limits; later ones are judged by them. */
export const baselineChecks = 8
/** So many checks in a row on one side of the centre are no chance (0.4 %). */
const runLength = 8

export type CheckWeightVerdict = {
  readonly standing: 'too-few' | 'in-control' | 'watch' | 'outside'
  /** What was seen. */
  readonly sentence: string
  /** What to do. */
  readonly action: string
  readonly lowerN: number | null
  readonly upperN: number | null
}

const goOn = 'Go on.'
const stop =
  'Do not test yet: look at weight, fixture, cable and zero, and check again. If it is outside again, calibrate before testing.'
const soon = 'Testing may go on today; look for what has changed and calibrate soon.'

function withoutChart(deviationN: number, allowedN: number, checks: number): CheckWeightVerdict {
  const limits = { lowerN: -allowedN, upperN: allowedN }
  if (Math.abs(deviationN) > allowedN)
    return {
      standing: 'outside',
      sentence: `The check weight reads ${deviationN.toPrecision(3)} N off, more than the uncertainty of ${allowedN.toPrecision(3)} N allows.`,
      action: stop,
      ...limits,
    }
  return {
    standing: 'too-few',
    sentence: `The check weight reads right within its uncertainty; ${baselineChecks - checks} more checks are needed for a control chart.`,
    action: goOn,
    ...limits,
  }
}

/**
 * Word on the newest reading of a check weight, from the deviations of all of them under one calibration, oldest first, N.
 *
 *   limits: individuals chart of the first 8; outside one is action. 8 in a row on one side, or an average
 *   (EWMA, weight 0.3) outside its own limits, is a warning of drift.
 *
 * Before there are 8, the deviation is compared with `allowedN`, the expanded uncertainty there. `leastSpreadN`, the resolution,
 * keeps limits from closing to nothing when the first checks agree to the digit.
 * Throws RangeError without a deviation, or for an allowance or spread that is negative.
 * Source: NIST/SEMATECH e-Handbook 6.3.2 and 6.3.2.4; runs of eight: 6.3.2 (Western Electric rules, from memory).
 * Checked: tests/domain/calibration/control/checkWeight.spec.ts.
 */
export function checkWeightVerdict(
  deviationsN: readonly number[],
  allowedN: number,
  leastSpreadN = 0,
): CheckWeightVerdict {
  const newest = deviationsN.at(-1)
  if (newest === undefined) throw new RangeError('checkWeightVerdict requires at least one deviation')
  if (!(allowedN >= 0 && leastSpreadN >= 0)) throw new RangeError('checkWeightVerdict requires limits of 0 or more')
  if (deviationsN.length <= baselineChecks) return withoutChart(newest, allowedN, deviationsN.length)
  const chart = individualsChart(deviationsN.slice(0, baselineChecks))
  const sd = Math.max((chart.upper - chart.centre) / 3, leastSpreadN)
  const limits = { lowerN: chart.centre - 3 * sd, upperN: chart.centre + 3 * sd }
  if (newest < limits.lowerN || newest > limits.upperN)
    return {
      standing: 'outside',
      sentence: `The check weight reads ${newest.toPrecision(3)} N off, outside its limits of ${limits.lowerN.toPrecision(3)} to ${limits.upperN.toPrecision(3)} N.`,
      action: stop,
      ...limits,
    }
  const later = deviationsN.slice(baselineChecks)
  const average = ewmaChart(later, chart.centre, sd)
  const smoothed = average.smoothed.at(-1)!
  if (smoothed < average.lower || smoothed > average.upper)
    return {
      standing: 'watch',
      sentence: 'The check weight drifts slowly away from its centre.',
      action: soon,
      ...limits,
    }
  const last = later.slice(-runLength)
  const sides = new Set(last.map((value) => Math.sign(value - chart.centre)))
  if (last.length === runLength && sides.size === 1 && !sides.has(0))
    return {
      standing: 'watch',
      sentence: `The last ${runLength} checks all lie on one side of the centre.`,
      action: soon,
      ...limits,
    }
  return { standing: 'in-control', sentence: 'The check weight reads as it should.', action: goOn, ...limits }
}
