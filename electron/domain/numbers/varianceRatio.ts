import { minimumBetween } from './goldenMinimum.ts'

/** Ratios of variances that are looked through, on the scale of their logarithm. */
const from = Math.log(1e-8)
const to = Math.log(1e8)
const steps = 64

/**
 * The ratio of two variances, 0 included, at which a deviance is least: a grid over its logarithm, then Brent's search between the
 * neighbours of the best. 0 where no ratio above it is better, for a variance has no other place to go.
 * Checked: tests/domain/numbers/varianceRatio.spec.ts.
 */
export function bestVarianceRatio(deviance: (ratio: number) => number): number {
  const at = (logRatio: number) => deviance(Math.exp(logRatio))
  const width = (to - from) / steps
  let best = from
  let least = at(from)
  for (let step = 1; step <= steps; step++) {
    const here = at(from + step * width)
    if (here < least) {
      least = here
      best = from + step * width
    }
  }
  const found = minimumBetween(at, Math.max(best - width, from), Math.min(best + width, to), 1e-9)
  return at(found) < deviance(0) ? Math.exp(found) : 0
}
