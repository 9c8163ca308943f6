import { addToSums } from './sums.ts'

/** A partial drop from which the load recovered. Times in s, forces as pushed. */
export type RecoveredDrops = {
  count: number
  firstStartS: number
  /** When the last drop had recovered by half. */
  lastEndS: number
  /** The largest of them, and the load above zero that it fell from. */
  largest: number
  largestFrom: number
}

/** Finds partial drops of a load while it is driven on. Constant memory. */
export type DropTracker = {
  push(timeS: number, force: number): void
  take(timeS: Float64Array, force: Float64Array, from: number, to: number): void
  recovered(): RecoveredDrops
  /** How far the load has come down in sudden steps since it last stood near its highest. */
  suddenFall(): number
}

/** A drop is at least this share of the load it falls from ... */
const leastDropShare = 0.045
/** ... and so many noise SDs of the means it is judged by. */
const leastDropNoise = 8
/** It falls within this time, s, or between two samples; a slower loss is relaxation. */
const fastS = 0.1
/** The load recovers when half of the drop is made good ... */
const recoveredShare = 0.5
/** ... but not sooner than this, s: what swings back at once is a knock on the bench, not a bond that gave way. */
const leastRecoveryS = 0.035
/** The load before a drop is the mean over this time, s. */
const levelS = 0.04
/** Samples are judged by means over this time, s. */
const meanS = 0.005
const windowCapacity = 64
/** The sudden steps are forgotten when the load is back at this share of its highest. */
const madeGoodShare = 0.98
/** A step between two means is sudden when it is so many times the highest load in a second (an opened valve lets go slower) ... */
const suddenPerS = 2.5
/** ... and at least this share of it. */
const suddenShare = 0.02

/**
 * Tells pop-in and stick-slip from noise, knocks and relaxation.
 *
 *   drop       M − v >= max(0.045 (M − zero), 8 σ / sqrt(n)) within 0.1 s      M load before the highest point of the last 0.1 s,
 *                                                                        v newest, means of n samples
 *   recovered  v >= M − 0.5 (M − lowest), at least 35 ms after the drop began
 *   sudden     between two means at least 2 % and 2.5 times per second of the highest load, and 8 σ / sqrt(n)
 *
 * Checked: tests/domain/signal/dropTracker.spec.ts.
 */
export function createDropTracker(options: { zero: number; noise: number; intervalS: number }): DropTracker {
  const { zero, noise, intervalS } = options
  const perMean = intervalS > 0 ? Math.max(1, Math.round(meanS / intervalS)) : 1
  const fastWindowS = Math.max(fastS, intervalS > 0 ? 1.5 * intervalS : 0)
  const noiseLimit = (leastDropNoise * noise) / Math.sqrt(perMean)
  const windowS = new Float64Array(windowCapacity)
  const windowV = new Float64Array(windowCapacity)
  const state = {
    n: 0,
    sumT: 0,
    sumF: 0,
    windowCount: 0,
    windowFrom: 0,
    highest: Number.NEGATIVE_INFINITY,
    dropFrom: 0,
    dropStartS: 0,
    low: 0,
    lowS: 0,
    sudden: 0,
    lastS: 0,
    lastMean: Number.NaN,
  }
  let dropped = false
  const drops: RecoveredDrops = { count: 0, firstStartS: 0, lastEndS: 0, largest: 0, largestFrom: 0 }

  function push(timeS: number, force: number): void {
    state.n += 1
    state.sumT += timeS
    state.sumF += force
    if (state.n === perMean) endMean()
  }

  function take(timeS: Float64Array, force: Float64Array, from: number, to: number): void {
    for (let i = from; i < to; ) {
      const end = Math.min(to, i + perMean - state.n)
      addToSums(state, timeS, force, i, end)
      i = end
      if (state.n === perMean) endMean()
    }
  }

  function endMean(): void {
    pushMean(state.sumT / state.n, state.sumF / state.n)
    state.n = 0
    state.sumT = 0
    state.sumF = 0
  }

  function pushMean(timeS: number, mean: number): void {
    windowS[state.windowCount % windowCapacity] = timeS
    windowV[state.windowCount % windowCapacity] = mean
    state.windowCount += 1
    if (mean > state.highest) state.highest = mean
    addSudden(timeS, mean)
    if (dropped) follow(timeS, mean)
    else lookForDrop(timeS, mean)
  }

  /** Sudden rises count against sudden falls, so that ringing comes to nothing. */
  function addSudden(timeS: number, mean: number): void {
    const load = state.highest - zero
    const fall = state.lastMean - mean
    const least = Math.max(noiseLimit, suddenShare * load, suddenPerS * load * (timeS - state.lastS))
    if (mean - zero >= madeGoodShare * load) state.sudden = 0
    else if (Math.abs(fall) >= least) state.sudden = Math.max(0, state.sudden + fall)
    state.lastS = timeS
    state.lastMean = mean
  }

  /** Ordinal of the highest mean of the fast window, no older than the last drop's lowest point. */
  function highestOfWindow(timeS: number): number {
    const newest = state.windowCount - 1
    const oldest = Math.max(0, state.windowFrom, newest - windowCapacity + 1)
    let best = newest
    for (let i = newest - 1; i >= oldest; i--) {
      // The mean before the newest counts however long ago it was: a slow device sees a fall between two samples.
      if (i < newest - 1 && timeS - windowS[i % windowCapacity]! > fastWindowS) break
      if (windowV[i % windowCapacity]! > windowV[best % windowCapacity]!) best = i
    }
    return best
  }

  /** Mean up to the highest point, so that the crest of a knock is not taken for the load; at slow rates the point itself. */
  function levelBefore(best: number): number {
    const endS = windowS[best % windowCapacity]!
    const oldest = Math.max(0, state.windowCount - windowCapacity)
    let sum = 0
    let count = 0
    for (let i = best; i >= oldest && endS - windowS[i % windowCapacity]! <= levelS; i--) {
      sum += windowV[i % windowCapacity]!
      count += 1
    }
    return sum / count
  }

  const leastDrop = (from: number) => Math.max(leastDropShare * (from - zero), noiseLimit)

  function lookForDrop(timeS: number, mean: number): void {
    const best = highestOfWindow(timeS)
    const crest = windowV[best % windowCapacity]!
    if (crest - mean < leastDrop(crest)) return
    const from = levelBefore(best)
    if (from - mean < leastDrop(from)) return
    dropped = true
    state.dropFrom = from
    state.dropStartS = windowS[best % windowCapacity]!
    state.low = mean
    state.lowS = timeS
    state.windowFrom = state.windowCount - 1
  }

  function follow(timeS: number, mean: number): void {
    const depth = state.dropFrom - state.low
    if (mean >= state.dropFrom - (1 - recoveredShare) * depth) {
      dropped = false
      state.windowFrom = state.windowCount - 1
      if (timeS - state.dropStartS < leastRecoveryS) return
      if (drops.count === 0) drops.firstStartS = state.dropStartS
      drops.count += 1
      drops.lastEndS = timeS
      if (depth > drops.largest) {
        drops.largest = depth
        drops.largestFrom = state.dropFrom - zero
      }
      return
    }
    if (mean < state.low && timeS - state.lowS <= fastWindowS) {
      state.low = mean
      state.lowS = timeS
      state.windowFrom = state.windowCount - 1
      return
    }
    // The load rests on its lower level; a second fast fall from there is a drop of its own.
    if (timeS - state.lowS > fastWindowS) lookForDrop(timeS, mean)
  }

  return {
    push,
    take,
    recovered: () => drops,
    suddenFall: () => state.sudden,
  }
}
