import { growingColumn } from '../../numbers/growingColumn.ts'
import { addToSums } from '../../numbers/sums.ts'

/** A curve as means of equal count, in bounded memory. */
export type MeanCurve = {
  take(timeS: Float64Array, force: Float64Array, from: number, to: number): void
  clear(): void
  /** From now on a mean is over 5 ms at least, or one sample where they are further apart, and each is told at once. */
  settle(intervalS: number, heard: (timeS: number, mean: number) => void): void
  /** The means that are complete; the arrays are the curve's own and hold until the next sample. */
  means(): { timeS: Float64Array; force: Float64Array; samplesPerMean: number }
  /** Time of the first mean at or above a force; of the newest when none is. */
  firstReachedS(force: number): number
}

/** Means that are kept at most: 5 minutes at 5 ms, 1 MB. */
export const mostMeans = 65_536
const leastMeanS = 0.005
/** The usual interval is known to about so much: 4 samples of 1.25 ms are 5 ms. */
const intervalSlack = 1e-3

/**
 * Samples to a mean of at least 5 ms: a power of two, so that means can be joined later; one where the interval is longer
 * or not known.
 */
export function samplesPerMean(intervalS: number): number {
  let samples = 1
  if (intervalS > 0) while (samples * intervalS < leastMeanS * (1 - intervalSlack)) samples *= 2
  return samples
}

/**
 * Keeps means of so many samples, and joins neighbours whenever 65,536 of them are kept: then each is over twice as many.
 * Samples are added one by one, in order, so that the means are the same to the last bit however a stream is cut.
 * Checked: tests/domain/signal/loading/meanCurve.spec.ts.
 */
export function createMeanCurve(): MeanCurve {
  const times = growingColumn()
  const forces = growingColumn()
  let heard: ((timeS: number, mean: number) => void) | null = null
  /** The mean that is being filled, of `perMean` samples, and the one of `perKept` such means that is kept. */
  const filling = { n: 0, sumT: 0, sumF: 0 }
  const joining = { n: 0, sumT: 0, sumF: 0 }
  let perMean = 1
  let perKept = 1

  function endMean(): void {
    const timeS = filling.sumT / filling.n
    const mean = filling.sumF / filling.n
    empty(filling)
    heard?.(timeS, mean)
    joining.n += 1
    joining.sumT += timeS
    joining.sumF += mean
    if (joining.n === perKept) keep()
  }

  function keep(): void {
    times.push(joining.sumT / joining.n)
    forces.push(joining.sumF / joining.n)
    empty(joining)
    if (times.length() === mostMeans) halve()
  }

  function halve(): void {
    joinPairs(times)
    joinPairs(forces)
    perKept *= 2
  }

  return {
    take(timeS, force, from, to) {
      for (let i = from; i < to; ) {
        const end = Math.min(to, i + perMean - filling.n)
        addToSums(filling, timeS, force, i, end)
        i = end
        if (filling.n === perMean) endMean()
      }
    },
    clear() {
      empty(filling)
      empty(joining)
      times.shorten(0)
      forces.shorten(0)
      perKept = 1
    },
    settle(intervalS, listener) {
      heard = listener
      if (joining.n > 0) keep()
      const wanted = samplesPerMean(intervalS)
      while (perKept < wanted) halve()
      // So far every sample was a mean of its own.
      perMean = wanted
      perKept /= wanted
    },
    means: () => ({ timeS: times.view(), force: forces.view(), samplesPerMean: perMean * perKept }),
    firstReachedS(force) {
      const at = forces.view().findIndex((mean) => mean >= force)
      if (at >= 0) return times.view()[at]!
      return filling.n > 0 ? filling.sumT / filling.n : (times.view().at(-1) ?? Number.NaN)
    },
  }
}

function empty(sums: { n: number; sumT: number; sumF: number }): void {
  sums.n = 0
  sums.sumT = 0
  sums.sumF = 0
}

/** Joins each two neighbours; the last of an odd number stays as it is. */
function joinPairs(column: ReturnType<typeof growingColumn>): void {
  const values = column.view()
  const used = values.length
  const pairs = used >> 1
  for (let i = 0; i < pairs; i++) values[i] = (values[2 * i]! + values[2 * i + 1]!) / 2
  if (used % 2 === 1) values[pairs] = values[used - 1]!
  column.shorten(pairs + (used % 2))
}
