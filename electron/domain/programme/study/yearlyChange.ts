import { shiftToFind } from '../../numbers/distributions/shiftToFind.ts'
import { momentsOf } from '../../numbers/moments.ts'

/**
 * Smallest steady change a year, in percent of the mean, that a straight line through all blocks of a series finds with that
 * power: so many blocks at each age, ages in months. Null with fewer than two ages or three blocks in all.
 *
 *   P(|T| > t) = power,  T noncentral t,  ν = n k − 2,  δ = β √(n Σ(aᵢ − ā)²) / σ      β change a year, aᵢ ages in years
 *
 * Source: the standard error of a slope, NIST/SEMATECH e-Handbook 4.4.3.1; power as domain/numbers/distributions/shiftToFind.ts.
 * Checked: tests/domain/programme/study/yearlyChange.spec.ts against R's lm and pt, and a simulation in R.
 */
export function yearlyChangeToFind(
  agesMonths: readonly number[],
  blocks: number,
  { cvPercent, confidence, power }: { cvPercent: number; confidence: number; power: number },
): number | null {
  const df = agesMonths.length * blocks - 2
  if (new Set(agesMonths).size < 2 || df < 1) return null
  const { squares } = momentsOf(agesMonths.map((months) => months / 12))
  return (cvPercent * shiftToFind(df, confidence, power)) / Math.sqrt(blocks * squares)
}
