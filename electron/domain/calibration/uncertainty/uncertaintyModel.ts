import type { CalibrationStep } from '#contract/calibration/calibrationAssessment.ts'
import type { UncertaintyModel } from '#contract/calibration/uncertainty.ts'
import type { CalibrationOptions } from '../calibrationOptions.ts'
import type { PolynomialFit } from '../fit/polynomialFit.ts'
import { type Repeatability, readingSpread } from '../steps/repeatability.ts'

/** What a calibration has found that bears on its uncertainty. */
export type UncertaintyFindings = {
  readonly fit: PolynomialFit
  readonly readings: readonly number[]
  readonly steps: readonly CalibrationStep[]
  readonly verifiedRangeN: readonly [number, number]
  readonly resolutionN: number | null
  /** null: no step was repeated; the spread about the curve then stands for it. */
  readonly repeats: Repeatability | null
  /** The curve fits and holds no reading with falling load, so that the spread about it is that of single readings. */
  readonly curveFits: boolean
  /** Largest distance of the curve from a step's mean where the lack of fit is significant; null where it is not. */
  readonly lackOfFitHalfWidthN: number | null
}

/** Half-width of the zero, N: what is left over after unloading, and half a step of the resolution. */
function zeroHalfWidthN(
  steps: readonly CalibrationStep[],
  highestN: number,
  resolutionN: number | null,
): number | null {
  const f0 = steps.find((step) => step.f0 !== null)?.f0 ?? null
  if (f0 === null && resolutionN === null) return null
  return (Math.abs(f0 ?? 0) / 100) * highestN + (resolutionN ?? 0) / 2
}

/** Half-width of reversibility as a share of the force: half the widest difference between rising and falling load. */
function reversibilityShare(steps: readonly CalibrationStep[]): number | null {
  const widths = steps.flatMap((step) => (step.v === null ? [] : [Math.abs(step.v) / 200]))
  return widths.length === 0 ? null : Math.max(...widths)
}

/**
 * Gathers what a calibration knows into a model from which the uncertainty at any force of its verified range follows;
 * null where the fit has no degrees of freedom.
 *
 * Forces and half-widths in N, shares of the force without unit, resolution in the unit of the reading.
 * Source: JCGM 100:2008, 4.1 to 4.3 (from memory); which contributions: common practice.
 * Checked: tests/domain/calibration/uncertainty/uncertaintyModel.spec.ts.
 */
export function uncertaintyModelOf(
  findings: UncertaintyFindings,
  options: CalibrationOptions,
): UncertaintyModel | null {
  const { fit, readings, steps, verifiedRangeN, resolutionN, repeats } = findings
  const { covariance } = fit.centred
  if (covariance === null || fit.residualSD === null) return null
  const aboutCurve = { sdN: fit.residualSD, degreesOfFreedom: fit.degreesOfFreedom }
  const spread = readingSpread(repeats, findings.curveFits || repeats === null ? aboutCurve : null)
  const inRange = steps.filter((step) => step.forceN >= verifiedRangeN[0])
  return {
    centred: {
      centre: fit.centred.centre,
      scale: fit.centred.scale,
      powers: [...fit.centred.powers],
      coefficients: [...fit.centred.coefficients],
      covariance: covariance.map((row) => [...row]),
      degreesOfFreedom: fit.degreesOfFreedom,
    },
    readingRange: [Math.min(...readings), Math.max(...readings)],
    forceRangeN: [verifiedRangeN[0], verifiedRangeN[1]],
    repeatabilityN: spread.sdN,
    repeatabilityDegreesOfFreedom: spread.degreesOfFreedom,
    lackOfFitHalfWidthN: findings.lackOfFitHalfWidthN,
    weightsShare: options.weightsShare,
    buoyancyShare: options.buoyancyShare,
    leverShare: options.leverShare,
    gravityShare: options.gravityShare,
    resolution: options.resolution,
    zeroHalfWidthN: zeroHalfWidthN(steps, verifiedRangeN[1], resolutionN),
    reversibilityShare: reversibilityShare(inRange),
    creepShare: options.creepShare,
  }
}
