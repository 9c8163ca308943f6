import type { Comparison } from '#contract/breaks/comparison.ts'
import { modifiedZScores } from '../../numbers/modifiedZScores.ts'

/** A curve whose score is above this is an outlying one. */
const outlyingScore = 3.5
/** Among fewer curves none is called outlying. */
const leastCurves = 5

/** Scores of the distances in their order, and which are outlying; or why nobody is pointed out. */
export type OutlyingCurves =
  | { notJudged: null; scores: number[]; outlying: boolean[] }
  | { notJudged: NonNullable<Comparison['notJudged']>; scores: null; outlying: null }

/**
 * Which curves lie far from the median curve, by the modified z-scores of their distances from it.
 *
 *   outlying: Mᵢ > 3.5      one side only: a curve that lies very near the median is none
 *
 * Nobody is pointed out among fewer than five curves, nor where more than half of them lie equally far.
 * Source: modifiedZScores.ts; five curves: common practice, no source.
 * Checked: tests/domain/signal/compare/outlyingCurves.spec.ts against scipy.
 */
export function outlyingCurves(distances: readonly number[]): OutlyingCurves {
  if (distances.length < leastCurves) return { notJudged: 'too-few', scores: null, outlying: null }
  const scores = modifiedZScores(distances)
  if (scores === null) return { notJudged: 'all-alike', scores: null, outlying: null }
  return { notJudged: null, scores, outlying: scores.map((score) => score > outlyingScore) }
}
