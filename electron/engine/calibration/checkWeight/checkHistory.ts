import type { Calibration } from '#contract/calibration/calibration.ts'
import type { CheckHistory, CheckWeightReading } from '#contract/calibration/checkWeight.ts'
import { baselineChecks, checkWeightVerdict } from '#domain/calibration/control/checkWeight.ts'
import { ewmaChart } from '#domain/calibration/control/ewmaChart.ts'
import { individualsChart } from '#domain/calibration/control/individualsChart.ts'
import { verificationOf } from '#domain/calibration/verificationOf.ts'

/** Allowed deviation where the calibration states no uncertainty at the weight, as a share of the force. Common practice, no source. */
const allowedShare = 0.01

/** The checks under one calibration as charts, one for each weight, in the order in which weights were first checked. */
export function checkHistories(calibration: Calibration, checks: readonly CheckWeightReading[]): CheckHistory[] {
  const resolution = calibration.circumstances?.resolution ?? 0
  const leastSpreadN = Math.abs(resolution * (calibration.assessment.result.coefficients[1] ?? 0)) / Math.sqrt(12)
  return [...Map.groupBy(checks, (check) => check.weight)].map(([weight, ofWeight]) => {
    const deviations = ofWeight.map((check) => check.indicatedN - check.expectedN)
    const { expectedN } = ofWeight.at(-1)!
    const allowedN = verificationOf(calibration, expectedN).expandedUncertaintyN ?? allowedShare * expectedN
    return {
      calibrationId: calibration.calibrationId,
      weight,
      checks: ofWeight.map((check, index) => ({ ...check, deviationN: deviations[index]! })),
      verdict: checkWeightVerdict(deviations, allowedN, leastSpreadN),
      ...chartsOf(deviations),
    }
  })
}

function chartsOf(deviations: readonly number[]): Pick<CheckHistory, 'individuals' | 'ewma'> {
  if (deviations.length < 2) return { individuals: null, ewma: null }
  const chart = individualsChart(deviations.slice(0, baselineChecks))
  const movingRanges = deviations.slice(1).map((value, index) => Math.abs(value - deviations[index]!))
  const later = deviations.slice(baselineChecks)
  const average = later.length === 0 ? null : ewmaChart(later, chart.centre, (chart.upper - chart.centre) / 3)
  return {
    individuals: { ...chart, movingRanges },
    ewma: average === null ? null : { ...average, smoothed: [...average.smoothed] },
  }
}
