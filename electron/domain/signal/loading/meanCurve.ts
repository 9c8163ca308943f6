import { addToSums } from '../../numbers/sums.ts'

/** A curve as means of equal count, in bounded memory. */
export type MeanCurve = {
  push(timeS: number, force: number): void
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
const firstCapacity = 1024
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
  let times = new Float64Array(firstCapacity)
  let forces = new Float64Array(firstCapacity)
  let heard: ((timeS: number, mean: number) => void) | null = null
  /** The mean that is being filled, of `perMean` samples, and the one of `perKept` such means that is kept. */
  const filling = { n: 0, sumT: 0, sumF: 0 }
  const joining = { n: 0, sumT: 0, sumF: 0 }
  let perMean = 1
  let perKept = 1
  let used = 0

  function push(timeS: number, force: number): void {
    filling.n += 1
    filling.sumT += timeS
    filling.sumF += force
    if (filling.n === perMean) endMean()
  }

  function take(timeS: Float64Array, force: Float64Array, from: number, to: number): void {
    for (let i = from; i < to; ) {
      const end = Math.min(to, i + perMean - filling.n)
      addToSums(filling, timeS, force, i, end)
      i = end
      if (filling.n === perMean) endMean()
    }
  }

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
    if (used === times.length) makeRoom()
    times[used] = joining.sumT / joining.n
    forces[used] = joining.sumF / joining.n
    used += 1
    empty(joining)
    if (used === mostMeans) halve()
  }

  function makeRoom(): void {
    const [longerT, longerF] = [new Float64Array(2 * used), new Float64Array(2 * used)]
    longerT.set(times)
    longerF.set(forces)
    times = longerT
    forces = longerF
  }

  /** Joins each two neighbours; the last of an odd number stays as it is. */
  function halve(): void {
    const pairs = used >> 1
    for (let i = 0; i < pairs; i++) {
      times[i] = (times[2 * i]! + times[2 * i + 1]!) / 2
      forces[i] = (forces[2 * i]! + forces[2 * i + 1]!) / 2
    }
    if (used % 2 === 1) {
      times[pairs] = times[used - 1]!
      forces[pairs] = forces[used - 1]!
    }
    used = pairs + (used % 2)
    perKept *= 2
  }

  function clear(): void {
    empty(filling)
    empty(joining)
    used = 0
    perKept = 1
  }

  function settle(intervalS: number, listener: (timeS: number, mean: number) => void): void {
    heard = listener
    if (joining.n > 0) keep()
    const wanted = samplesPerMean(intervalS)
    while (perKept < wanted) halve()
    // So far every sample was a mean of its own.
    perMean = wanted
    perKept /= wanted
  }

  return {
    push,
    take,
    clear,
    settle,
    means: () => ({
      timeS: times.subarray(0, used),
      force: forces.subarray(0, used),
      samplesPerMean: perMean * perKept,
    }),
    firstReachedS(force) {
      for (let i = 0; i < used; i++) if (forces[i]! >= force) return times[i]!
      return filling.n > 0 ? filling.sumT / filling.n : (times[used - 1] ?? Number.NaN)
    },
  }
}

function empty(sums: { n: number; sumT: number; sumF: number }): void {
  sums.n = 0
  sums.sumT = 0
  sums.sumF = 0
}
