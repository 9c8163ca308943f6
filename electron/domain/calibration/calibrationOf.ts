import type { CalibrationAssessment, LackOfFitTest } from '#contract/calibration/calibrationAssessment.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { Trouble } from '#contract/errors.ts'
import { calibrationNotes } from './calibrationNotes.ts'
import { type CalibrationOptions, defaultCalibrationOptions } from './calibrationOptions.ts'
import { checkCalibrationRows, checkEnoughSteps } from './calibrationRows.ts'
import { proposeDegree, significance } from './fit/degreeProposal.ts'
import { lackOfFit } from './fit/lackOfFit.ts'
import { isMonotone, polynomialSlope } from './fit/polynomial.ts'
import { type Degree, type PolynomialFit, polynomialFit } from './fit/polynomialFit.ts'
import { fittedValue } from './fit/prediction.ts'
import { classOfAll, classRanges } from './steps/accuracyClass.ts'
import { forceSteps } from './steps/forceSteps.ts'
import { pooledRepeatability } from './steps/repeatability.ts'
import { repeatedSteps } from './steps/repeatedSteps.ts'
import { type IndicatedRow, stepTable } from './steps/stepTable.ts'
import { verifiedRangeN } from './steps/verifiedRange.ts'
import { uncertaintyBudget } from './uncertainty/uncertaintyBudget.ts'
import { uncertaintyModelOf } from './uncertainty/uncertaintyModel.ts'

/** Names this way of calibrating in every record that it makes. A change that moves a result gets a new name. */
export const calibrationMethod = 'calibration-1'

const readingsOf = (rows: readonly CalibrationRow[]) => rows.map((row) => row.reading)
const forcesOf = (rows: readonly CalibrationRow[]) => rows.map((row) => row.forceN)
const forceStepsOf = (rows: readonly CalibrationRow[]) => forceSteps(forcesOf(rows))

function fitOf(rows: readonly CalibrationRow[], degree: Degree, throughZero: boolean): PolynomialFit {
  const readings = readingsOf(rows)
  const fit = polynomialFit(readings, forcesOf(rows), degree, throughZero)
  if (!isMonotone(fit.coefficients, Math.min(...readings), Math.max(...readings)))
    throw new Trouble(
      'invalid-input',
      `A curve of degree ${degree} through these readings turns back on itself between them.`,
      'Choose a lower degree, or look for a step that is wrong.',
    )
  return fit
}

/** Resolution in N where the curve is steepest, so that the 200 times rule holds everywhere. */
function coarsestResolutionN(fit: PolynomialFit, rows: readonly CalibrationRow[], resolution: number | null) {
  if (resolution === null) return null
  return (
    resolution * Math.max(...readingsOf(rows).map((reading) => Math.abs(polynomialSlope(fit.coefficients, reading))))
  )
}

/** Largest distance of the curve from the mean of a step, N, where the lack of fit is significant; else null. */
function lackHalfWidthN(rows: readonly IndicatedRow[], test: LackOfFitTest | null): number | null {
  if (test === null || test.pValue >= significance) return null
  const steps = forceStepsOf(rows)
  const misses = [...Map.groupBy(rows.keys(), (index) => steps[index]!).values()]
    .map((indexes) => indexes.map((index) => rows[index]!))
    .map((step) => Math.abs(step.reduce((sum, row) => sum + row.indicatedN - row.forceN, 0) / step.length))
  return Math.max(...misses)
}

/**
 * Calibrates: rows of applied force and reading in, curve force(reading) with all that can be said of it out.
 *
 *   F = b₀ + b₁ r + b₂ r² + b₃ r³      F newtons, r reading in its own unit
 *
 * Fits by least squares over all rows or the increasing ones; degree as asked for or as proposed. Steps, class, verified range,
 * budget and notes as in the functions named for them. What the data cannot give is null. Only steps in the verified range
 * count for the class.
 * Throws Trouble for rows that are no calibration, too few steps for the degree, or a curve that turns back on itself.
 * Source: of each part, beside it. Checked: tests/domain/calibration/calibrationOf.spec.ts against NIST StRD Pontius
 * in both roles and by simulated coverage.
 */
export function calibrationOf(
  rows: readonly CalibrationRow[],
  chosen: Partial<CalibrationOptions> = {},
): CalibrationAssessment {
  const options: CalibrationOptions = { ...defaultCalibrationOptions, ...chosen }
  const { throughZero, fitOver, resolution } = options
  checkCalibrationRows(rows, options)
  const fittedRows = fitOver === 'up' ? rows.filter((row) => row.direction === 'up') : rows
  checkEnoughSteps(fittedRows, options.degree ?? 1, throughZero)
  const proposal = proposeDegree(readingsOf(fittedRows), forcesOf(fittedRows), throughZero)
  const degree = options.degree ?? (proposal.degree as Degree)
  const fit = fitOf(fittedRows, degree, throughZero)
  const test = lackOfFit(
    fit.residuals,
    repeatedSteps(readingsOf(fittedRows), forceStepsOf(fittedRows)),
    fit.centred.powers.length,
  )

  const indicated = rows.map((row) => ({ ...row, indicatedN: fittedValue(fit.centred, row.reading) }))
  const steps = stepTable(indicated, fit, resolution)
  const appliedN = steps.map((step) => step.forceN)
  const resolutionN = coarsestResolutionN(fit, fittedRows, resolution)
  const rangeN = verifiedRangeN(forcesOf(rows), resolutionN)
  const inRange = steps.filter((step) => rangeN !== null && step.forceN >= rangeN[0])
  const rising = indicated.filter((row) => row.forceN > 0 && row.direction === 'up')
  const repeats = pooledRepeatability(
    rising.map((row) => row.indicatedN - row.forceN),
    forceStepsOf(rising),
  )
  const fittedIndicated = fitOver === 'up' ? indicated.filter((row) => row.direction === 'up') : indicated
  const significantLackN = lackHalfWidthN(fittedIndicated, test)
  const model =
    rangeN === null
      ? null
      : uncertaintyModelOf(
          {
            fit,
            readings: readingsOf(fittedRows),
            steps,
            verifiedRangeN: rangeN,
            resolutionN,
            repeats,
            curveFits: significantLackN === null && fittedRows.every((row) => row.direction === 'up'),
            lackOfFitHalfWidthN: significantLackN,
          },
          options,
        )
  const budget = model === null ? null : uncertaintyBudget(model, appliedN)
  const { degreesOfFreedom } = fit
  return {
    method: calibrationMethod,
    result: {
      degree,
      coefficients: [...fit.coefficients],
      coefficientSE: [...fit.standardErrors],
      residualSD: fit.residualSD,
      rSquared: fit.rSquared,
      readings: fittedRows.length,
      verifiedRangeN: rangeN,
      steps,
      class: classOfAll(inRange),
      expandedUncertaintyPercent: budget?.worstPercent ?? null,
    },
    fitOver,
    throughZero,
    proposal,
    lackOfFit: test,
    residualsN: indicated.map((row) => row.indicatedN - row.forceN),
    indicatedN: indicated.map((row) => row.indicatedN),
    budget,
    classRanges: classRanges(inRange),
    notes: calibrationNotes({
      rows,
      options,
      degree,
      proposal,
      lackOfFit: test,
      steps,
      verifiedRangeN: rangeN,
      degreesOfFreedom,
      repeated: repeats !== null,
    }),
  }
}
