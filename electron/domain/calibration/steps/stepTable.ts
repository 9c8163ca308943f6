import type { CalibrationStep } from '#contract/calibration/calibrationAssessment.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { polynomialSlope } from '../fit/polynomial.ts'
import type { PolynomialFit } from '../fit/polynomialFit.ts'
import { classOfStep } from './accuracyClass.ts'
import { forceSteps } from './forceSteps.ts'
import { stepErrors } from './stepErrors.ts'
import { zeroErrorN } from './zeroError.ts'

/** A row with the force that the curve gives for its reading. */
export type IndicatedRow = CalibrationRow & { readonly indicatedN: number }

function pairsOf(up: readonly IndicatedRow[], step: readonly IndicatedRow[]) {
  return up.flatMap((row) =>
    step
      .filter((other) => other.run === row.run && other.direction === 'down')
      .map((other) => ({ upN: row.indicatedN, downN: other.indicatedN })),
  )
}

/**
 * Errors and class of every step above zero, lowest force first.
 *
 * Forces that are one load in name make one step; each is judged by its own force, and the error laid at that of the step.
 * A curve without degrees of freedom goes through its readings, so q would say nothing: it is null then.
 * `resolution` in the unit of the reading, null: not known.
 * Source: ISO 7500-1 (from memory). Checked: tests/domain/calibration/steps/stepTable.spec.ts.
 */
export function stepTable(
  rows: readonly IndicatedRow[],
  fit: Pick<PolynomialFit, 'coefficients' | 'degreesOfFreedom'>,
  resolution: number | null,
): CalibrationStep[] {
  const zeroN = zeroErrorN(rows)
  const loaded = rows.filter((row) => row.forceN > 0)
  const highestForceN = Math.max(...loaded.map((row) => row.forceN))
  const stepOf = forceSteps(loaded.map((row) => row.forceN))
  const steps = [...Map.groupBy(loaded.keys(), (index) => stepOf[index]!)].map(([forceN, indexes]) => {
    const step = indexes.map((index) => {
      const row = loaded[index]!
      return { ...row, indicatedN: row.indicatedN - row.forceN + forceN }
    })
    const up = step.filter((row) => row.direction === 'up')
    const meanReading = step.reduce((sum, row) => sum + row.reading, 0) / step.length
    const errors = stepErrors({
      forceN,
      increasingN: up.map((row) => row.indicatedN),
      pairsN: pairsOf(up, step),
      resolutionN: resolution === null ? null : resolution * Math.abs(polynomialSlope(fit.coefficients, meanReading)),
      zeroErrorN: zeroN,
      highestForceN,
    })
    const known = fit.degreesOfFreedom === 0 ? { ...errors, q: null } : errors
    return { forceN, ...known, class: classOfStep(known) }
  })
  return steps.sort((one, other) => one.forceN - other.forceN)
}
