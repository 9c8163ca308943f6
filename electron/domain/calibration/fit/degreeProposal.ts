import type { DegreeProposal, LackOfFitTest } from '#contract/calibration/calibrationAssessment.ts'
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

const percent = (probability: number) =>
  probability < 0.0001 ? 'below 0.01' : String(Number((100 * probability).toPrecision(2)))

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
function byNextCoefficient(candidates: readonly Candidate[]): { chosen: Candidate; reason: string } {
  let chosen = candidates[0]!
  for (const next of candidates.slice(1)) {
    const { coefficients, covariance, degreesOfFreedom } = next.fit.centred
    const variance = covariance?.at(-1)?.at(-1) ?? null
    if (variance === null)
      return {
        chosen,
        reason: `Degree ${chosen.degree}: no step was repeated, and there are too few steps to test a higher degree.`,
      }
    const probability = variance > 0 ? tTwoSided(coefficients.at(-1)! / Math.sqrt(variance), degreesOfFreedom) : 0
    if (probability >= significance)
      return {
        chosen,
        reason: `Degree ${chosen.degree}: no step was repeated, and one degree more does not improve the fit significantly (probability by chance ${percent(probability)} %).`,
      }
    chosen = next
  }
  return {
    chosen,
    reason:
      chosen.degree === 1
        ? 'Degree 1: there are too few different loads for a higher degree, or it would turn back between the readings.'
        : `Degree ${chosen.degree}: no step was repeated, and every lower degree fits significantly worse.`,
  }
}

function byLackOfFit(candidates: readonly Candidate[]): { chosen: Candidate; reason: string } {
  const tested = candidates.filter((candidate) => candidate.test !== null)
  const adequate = tested.find((candidate) => candidate.test!.pValue >= significance)
  const lower = tested.filter((candidate) => adequate === undefined || candidate.degree < adequate.degree)
  const rejected = lower.map(({ degree, test }) => `degree ${degree} (${percent(test!.pValue)} %)`).join(', ')
  if (adequate === undefined) {
    const chosen = tested.at(-1)!
    return {
      chosen,
      reason: `Degree ${chosen.degree} is the highest that can be tested here, and even it fits worse than the repeats allow: the lack of fit is significant for ${rejected}. Look for a step that is off.`,
    }
  }
  const because = `its lack of fit is not significant (probability by chance ${percent(adequate.test!.pValue)} %)`
  return {
    chosen: adequate,
    reason:
      rejected === ''
        ? `Degree ${adequate.degree}: ${because}, so nothing more is needed.`
        : `Degree ${adequate.degree}: ${because}, while that of lower degrees is: ${rejected}.`,
  }
}

/**
 * The lowest degree whose lack of fit is not significant at 5 %, with the reason in a sentence.
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
    return {
      degree: exact.degree,
      reason: `Degree ${exact.degree}: it goes through every reading but for rounding.`,
      tried,
    }
  const { chosen, reason } = candidates[0]!.test === null ? byNextCoefficient(candidates) : byLackOfFit(candidates)
  return { degree: chosen.degree, reason, tried }
}
