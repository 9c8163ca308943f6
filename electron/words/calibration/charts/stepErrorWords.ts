import { countOf } from '../../units/counts.ts'
import { signedNumber } from '../../units/numbers.ts'
import type { Quantity } from '../../units/quantities.ts'
import { loadText } from '../weightWords.ts'
import { farthestFromZero } from './farthestFromZero.ts'

type StepError = { forceN: number; errorPercent: number }

/** The relative error of one step. */
export function stepErrorWords({ forceN, errorPercent }: StepError, force: Quantity): string {
  return `${loadText(forceN, force)}: ${signedNumber(errorPercent, 2)} %`
}

/** What a plot of step errors says. */
export function stepErrorsWords(steps: readonly StepError[], force: Quantity): string {
  const farthest = farthestFromZero(steps, ({ errorPercent }) => errorPercent)
  if (farthest === null) return 'There is no step with an error.'
  return `${countOf(steps.length, 'step')}. The error farthest from zero: ${stepErrorWords(farthest, force)}.`
}
