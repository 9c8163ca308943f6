import type { LoadDirection } from '#contract/calibration/reading.ts'
import { countOf } from '../../units/counts.ts'
import type { Quantity } from '../../units/quantities.ts'
import { directionWords } from '../readingWords.ts'
import { loadText } from '../weightWords.ts'
import { farthestFromZero } from './farthestFromZero.ts'
import { signedForce } from './signedForce.ts'

type Residual = { number: number; run: number; direction: LoadDirection; forceN: number; residualN: number }

/** One residual of a calibration, with the reading that it belongs to. */
export function residualWords({ number, run, direction, forceN, residualN }: Residual, force: Quantity): string {
  return `Reading ${number}, run ${run} ${directionWords[direction]}, ${loadText(forceN, force)}: ${signedForce(residualN, force)}`
}

/** What a plot of residuals says: how many, how far they reach, and which lies farthest out. */
export function residualsWords(residuals: readonly Residual[], force: Quantity): string {
  const farthest = farthestFromZero(residuals, ({ residualN }) => residualN)
  if (farthest === null) return 'There is no reading.'
  const runs = new Set(residuals.map(({ run }) => run)).size
  return `${countOf(residuals.length, 'reading')} in ${countOf(runs, 'run')}. The residual farthest from zero: ${residualWords(farthest, force)}.`
}

/** Which runs a shape stands for where there are so many shapes. */
export function runsWords(first: number, runs: number, shapes: number): string {
  return runs > shapes ? `runs ${first}, ${first + shapes}, …` : `run ${first}`
}
