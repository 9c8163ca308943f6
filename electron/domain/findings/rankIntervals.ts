import { chiSquareDraw } from '../numbers/chiSquareDraw.ts'
import { momentsOf } from '../numbers/moments.ts'
import { createRandom } from '../numbers/random.ts'

/** Rank 1 is the strongest mean. */
export type RankInterval = {
  readonly rank: number
  readonly low: number
  readonly high: number
  /** Share of the resamplings in which it came first; ties share it. */
  readonly firstShare: number
}

/**
 * Ranks of the means of groups with at least two values each, and how far they can be told from resampling the blocks.
 *
 * Each draw takes as many blocks from each group, with replacement, about its mean and widened by √(n/(n − 1)), so that the means
 * vary as s²/n says, and by a drawn √((n − 1)/χ²), as s is itself found from few blocks: what is drawn then spreads as Student's t
 * and not as the normal distribution. Means that tie in a draw share their places. Low and high are the ranks that
 * (1 − confidence)/2 of the draws lie outside on either side.
 * Throws RangeError for a group with fewer than two values.
 * Source: Efron and Tibshirani, An Introduction to the Bootstrap, 1993, chapters 6 and 13 (from memory); definition of Student's t.
 * Checked: tests/domain/findings/rankIntervals.spec.ts, and coverage by `npm run soak -- coverage`.
 */
export function rankIntervals(
  groups: readonly ArrayLike<number>[],
  terms: { confidence: number; draws: number; seed: number },
): RankInterval[] {
  const random = createRandom(terms.seed)
  const k = groups.length
  const centred = groups.map((values) => {
    if (values.length < 2) throw new RangeError('rankIntervals requires two values in each group')
    const { n, mean } = momentsOf(values)
    const wider = Math.sqrt(n / (n - 1))
    return { mean, n, deviations: Float64Array.from(values, (value) => ((value - mean) * wider) / n) }
  })
  const counts = groups.map(() => new Float64Array(k + 1))
  const first = new Float64Array(k)
  const means = new Float64Array(k)
  const order = Array.from({ length: k }, (_, i) => i)
  for (let draw = 0; draw < terms.draws; draw++) {
    for (let i = 0; i < k; i++) {
      const { mean, n, deviations } = centred[i]!
      let sum = 0
      for (let j = 0; j < n; j++) sum += deviations[(random.unit() * n) | 0]!
      means[i] = mean + sum * Math.sqrt((n - 1) / chiSquareDraw(n - 1, random))
    }
    sortDown(order, means)
    for (let from = 0; from < k; ) {
      let to = from + 1
      while (to < k && means[order[to]!] === means[order[from]!]) to += 1
      const share = 1 / (to - from)
      for (let at = from; at < to; at++) {
        const count = counts[order[at]!]!
        for (let place = from + 1; place <= to; place++) count[place]! += share
        if (from === 0) first[order[at]!]! += share
      }
      from = to
    }
  }
  const outside = ((1 - terms.confidence) / 2) * terms.draws
  return centred.map(({ mean }, i) => ({
    rank: 1 + centred.filter((other) => other.mean > mean).length,
    ...middleRanks(counts[i]!, outside),
    firstShare: first[i]! / terms.draws,
  }))
}

/** Puts places in the order of their means, largest first; by insertion, as the order of the draw before is nearly that. */
function sortDown(order: number[], means: Float64Array): void {
  for (let at = 1; at < order.length; at++) {
    const moving = order[at]!
    const mean = means[moving]!
    let to = at
    for (; to > 0 && means[order[to - 1]!]! < mean; to--) order[to] = order[to - 1]!
    order[to] = moving
  }
}

/** The lowest and the highest rank beyond which no more than `outside` draws lie. */
function middleRanks(counts: Float64Array, outside: number): { low: number; high: number } {
  let low = 1
  for (let sum = counts[low]!; sum <= outside; sum += counts[low]!) low += 1
  let high = counts.length - 1
  for (let sum = counts[high]!; sum <= outside; sum += counts[high]!) high -= 1
  return { low, high }
}
