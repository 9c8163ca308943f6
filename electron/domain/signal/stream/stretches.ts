import { createSampleInterval } from './time/sampleInterval.ts'

/** Samples [from, to) of a curve without a gap between them. */
export type Stretch = {
  from: number
  to: number
  /** Mean time between its samples, s; in a short stretch that of the whole curve. NaN for a curve of one sample. */
  intervalS: number
  /** SD of its steps as a share of their mean; 0 in a short stretch. */
  jitter: number
}

/** The usual step is learnt from so many samples at most. */
const taught = 4096
/** A stretch of fewer samples tells nothing of its interval. */
const shortStretch = 10

/**
 * A curve cut where samples are missing. Gaps are told from the times alone, as sampleInterval.ts tells them of the live
 * stream: a step of more than 1.75 usual ones. Times must rise. Runs in O(n).
 *
 *   interval = (t_last − t_first) / (n − 1)      jitter = SD of the n − 1 steps / interval
 *
 * Checked: tests/domain/signal/stream/stretches.spec.ts against numpy.std.
 */
export function stretchesBetweenGaps(timeS: Float64Array): Stretch[] {
  const samples = timeS.length
  if (samples === 0) return []
  const interval = createSampleInterval()
  interval.learn(timeS, Math.min(samples, taught))
  const starts = [0]
  for (let i = 0; i < samples; ) {
    i = interval.take(timeS, i, samples)
    if (interval.missingBefore() > 0) starts.push(i - 1)
  }
  const meanS = interval.meanS()
  return starts.map((from, k) => {
    const to = starts[k + 1] ?? samples
    return to - from < shortStretch ? { from, to, intervalS: meanS, jitter: 0 } : measured(timeS, from, to)
  })
}

function measured(timeS: Float64Array, from: number, to: number): Stretch {
  const steps = to - from - 1
  const intervalS = (timeS[to - 1]! - timeS[from]!) / steps
  let squares = 0
  for (let i = from + 1; i < to; i++) squares += (timeS[i]! - timeS[i - 1]! - intervalS) ** 2
  return { from, to, intervalS, jitter: Math.sqrt(squares / steps) / intervalS }
}
