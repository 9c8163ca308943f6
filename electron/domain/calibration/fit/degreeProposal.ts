import type { DegreeProposal, LackOfFitTest } from '#contract/calibration/calibrationAssessment.ts'
import type { DegreeReason } from '#contract/calibration/calibrationNotes.ts'
import { tTwoSided } from '../../numbers/distributions/studentT.ts'
import { forceSteps } from '../steps/forceSteps.ts'
import { repeatedSteps } from '../steps/repeatedSteps.ts'
import { lackOfFit } from './lackOfFit.ts'
import { isMonotone } from './polynomial.ts'
import { type Degree, type PolynomialFit, polynomialFit } from './polynomialFit.ts'

/** Probability below which a test counts as significant. */
export const significance = 0.05

/** Residuals below this share of the range of forces are rounding, not lack of fit. */
const roundingShare = 1e-10

type Candidate = { readonly degree: Degree; readonly fit: PolynomialFit; readonly test: LackOfFitTest | null }

function candidatesOf(
  readings: readonly number[],
  forcesN: readonly number[],
  throughZero: boolean,
  highest: Degree,
): Candidate[] {
  const zeroRows = throughZero ? (value: number) => value !== 0 : () => true
  const distinct = Math.min(new Set(readings.filter(zeroRows)).size, new Set(forceSteps(forcesN.filter(zeroRows))).size)
  const steps = repeatedSteps(readings, forceSteps(forcesN))
  const low = Math.min(...readings)
  const high = Math.max(...readings)
  return ([1, 2, 3] as const)
    .filter((degree) => degree <= highest && (degree === 1 || distinct >= degree + (throughZero ? 0 : 1)))
    .map((degree) => {
      const fit = polynomialFit(readings, forcesN, degree, throughZero)
      return {
        degree,
        fit,
        test: lackOfFit(fit.residuals, steps, fit.centred.powers.length),
      }
    })
    .filter(({ degree, fit }) => degree === 1 || isMonotone(fit.coefficients, low, high))
}

/** Without repeats: goes on while the next coefficient is significant. */
function byNextCoefficient(candidates: readonly Candidate[]): { chosen: Candidate; reason: DegreeReason } {
  let chosen = candidates[0]!
  for (const next of candidates.slice(1)) {
    const { coefficients, covariance, degreesOfFreedom } = next.fit.centred
    const variance = covariance?.at(-1)?.at(-1) ?? null
    if (variance === null) return { chosen, reason: { code: 'too-few-steps' } }
    // Above 0: a curve that leaves no variance goes through every reading, which was seen before.
    const probability = tTwoSided(coefficients.at(-1)! / Math.sqrt(variance), degreesOfFreedom)
    if (probability >= significance) return { chosen, reason: { code: 'next-not-significant', pValue: probability } }
    chosen = next
  }
  return { chosen, reason: { code: chosen.degree === 1 ? 'too-few-loads' : 'lower-fit-worse' } }
}

function byLackOfFit(candidates: readonly Candidate[]): { chosen: Candidate; reason: DegreeReason } {
  const tested = candidates.filter((candidate) => candidate.test !== null)
  const adequate = tested.find((candidate) => candidate.test!.pValue >= significance)
  if (adequate === undefined) return { chosen: tested.at(-1)!, reason: { code: 'all-lack' } }
  return { chosen: adequate, reason: { code: 'lack-not-significant' } }
}

/**
 * The lowest degree whose lack of fit is not significant at 5 %, with the reason.
 *
 * Tests force(reading) against the spread of the repeats of each step. Where no step was repeated it adds degrees while the
 * next coefficient is significant (Student's t). A curve that turns back within the readings is never proposed.
 * Readings and forces in any unit, N for the forces. Throws what polynomialFit throws for a line.
 * Source: NIST/SEMATECH e-Handbook 4.4.4.6 and its load cell case study 4.6.1 (quadratic chosen over the line).
 * Checked: tests/domain/calibration/fit/degreeProposal.spec.ts.
 */
export function proposeDegree(
  readings: readonly number[],
  forcesN: readonly number[],
  throughZero = false,
  highest: Degree = 3,
): DegreeProposal {
  const candidates = candidatesOf(readings, forcesN, throughZero, highest)
  const span = Math.max(...forcesN) - Math.min(...forcesN)
  const exact = candidates.find(({ fit }) => fit.residuals.every((e) => Math.abs(e) <= roundingShare * span))
  const tried = candidates.map(({ degree, test }) => ({ degree, lackOfFit: test }))
  if (exact !== undefined && exact.fit.degreesOfFreedom > 0)
    return { degree: exact.degree, reason: { code: 'exact' }, tried }
  const { chosen, reason } = candidates[0]!.test === null ? byNextCoefficient(candidates) : byLackOfFit(candidates)
  return { degree: chosen.degree, reason, tried }
}
