import { chiSquareDraw } from '../numbers/chiSquareDraw.ts'
import { momentsOf } from '../numbers/moments.ts'
import { createRandom, type RandomStream } from '../numbers/random.ts'

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
  const byMean = Uint32Array.from(groups.keys()).sort((one, other) => centred[other]!.mean - centred[one]!.mean)
  const order = new Uint32Array(k)
  for (let draw = 0; draw < terms.draws; draw++) {
    for (let i = 0; i < k; i++) means[i] = drawnMean(centred[i]!, random)
    order.set(byMean)
    sortDown(order, means)
    countPlaces(order, means, counts, first)
  }
  const outside = ((1 - terms.confidence) / 2) * terms.draws
  return centred.map(({ mean }, i) => ({
    rank: 1 + centred.filter((other) => other.mean > mean).length,
    ...middleRanks(counts[i]!, outside),
    firstShare: first[i]! / terms.draws,
  }))
}

/** Of a group: its mean, and how far its blocks lie from it, widened, each over their number. */
type Centred = { readonly mean: number; readonly n: number; readonly deviations: Float64Array }

function drawnMean({ mean, n, deviations }: Centred, random: RandomStream): number {
  let sum = 0
  for (let pairs = n >> 1; pairs > 0; pairs--) {
    // What is behind the point tells a second place: n² pairs are few beside the 2^32 that a number can be
    const place = random.unit() * n
    const whole = place | 0
    sum += deviations[whole]! + deviations[((place - whole) * n) | 0]!
  }
  if (n % 2 === 1) sum += deviations[(random.unit() * n) | 0]!
  return mean + sum * Math.sqrt((n - 1) / chiSquareDraw(n - 1, random))
}

/** Puts places in the order of their means, largest first; by insertion, as that of the means before the draw is nearly theirs. */
function sortDown(order: Uint32Array, means: Float64Array): void {
  for (let at = 1; at < order.length; at++) {
    const moving = order[at]!
    const mean = means[moving]!
    let to = at
    for (; to > 0 && means[order[to - 1]!]! < mean; to--) order[to] = order[to - 1]!
    order[to] = moving
  }
}

/** Counts for each group the places that it has in a draw, and its share of the first. */
function countPlaces(order: Uint32Array, means: Float64Array, counts: Float64Array[], first: Float64Array): void {
  for (let from = 0; from < order.length; ) {
    let to = from + 1
    while (to < order.length && means[order[to]!] === means[order[from]!]) to += 1
    const share = 1 / (to - from)
    for (let at = from; at < to; at++) {
      const count = counts[order[at]!]!
      for (let place = from + 1; place <= to; place++) count[place]! += share
      if (from === 0) first[order[at]!]! += share
    }
    from = to
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
