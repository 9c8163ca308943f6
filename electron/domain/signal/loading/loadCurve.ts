import type { DetectionSettings } from '#contract/breaks/detection.ts'
import { type ClippingWatch, createClippingWatch } from '../stream/clippingWatch.ts'
import type { RecentSamples } from '../stream/recentSamples.ts'
import { beginFallRecord, type FallRecord } from './fallRecord.ts'
import { slopeBeforePeak } from './loadingRate.ts'

/** Where a loading begins and what is known of the bench at that moment. */
export type LoadStart = {
  onsetS: number
  /** Level at rest: shares of the load are taken above it. */
  zero: number
  noise: number
  threshold: number
  intervalS: number
  highest: number
  highestS: number
  /** When the loading first reached a force, s. */
  firstReachedS(force: number): number
  /** How far the load has come down in sudden steps, the newest sample included. */
  suddenFall(): number
}

/** What a loading came to. */
export type LoadEnd = {
  outcome: 'break' | 'unloading' | 'none'
  peak: number
  peakS: number
  breakS: number | null
  afterBreak: number | null
  loadingRate: number | null
  /** How long the fall took, s; null: no break, or it cannot be told. */
  fallS: number | null
  clipping: ClippingWatch
}

/** Follows one loading from its start to its end, sample by sample in constant memory. */
export type LoadCurve = {
  /** Takes a good sample, which `recent` holds already; true when the capture is over. */
  push(timeS: number, force: number, reading: number): boolean
  /** Index of the first sample that wants a closer look; with all before it the load stays near its peak. Changes nothing. */
  plainUntil(timeS: Float64Array, force: Float64Array, from: number, to: number): number
  /** Takes good samples, which `recent` holds already, up to what `plainUntil` has said, as `push` would. */
  take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): void
  /** Highest good sample so far. */
  peak(): number
  end(): LoadEnd
}

/** The peak must be so many start thresholds above zero to be the load on a specimen. */
const leastPeakThresholds = 3
/** A specimen is not loaded in less time than this, s, from onset to 80 % of the peak: a weight put on the bench is no loading. */
const shortestLoadingS = 0.2
const loadedShare = 0.8
/** Above so many start thresholds it is no weight that somebody put there, however fast it came. */
const handledThresholds = 40
/** After a fall, a load this near the peak again was no break ... */
const recoveredShare = 0.9
/** The load before a fall is the mean over this time, s, and samples: the crest of a knock alone is no load. */
const beforeS = 0.1
const beforeSamples = 3
/** Going back from the middle of a fall, it began where a sample is no longer this share of the fall above the next. */
const stillFallingShare = 0.02
/** The load after the break is the mean over this time after the fall, s: ringing has died away, the press is not let back yet. */
const afterFromS = 0.1
const afterToS = 0.3
/** Most of a stepwise fall must have been fast steps. */
const fastFallShare = 0.6
/** Two samples of a slow device are further apart than breakDropWithinS; so many intervals are always looked back. */
const dropIntervals = 1.5
/** A load that stays below this share of the peak for so long, s, will not be driven on. */
const forgottenShare = 0.25
const forgottenS = 30
/** So does one that never came to anything. */
const idleLoadS = 60
/** So many samples after a peak at the latest its slope is found, while the ring still holds those before it. */
const rateWithin = 1024
/** And one that makes no new peak for so long, s. */
const longestHoldS = 1800

/**
 * The rules of a loading, L load above zero, P highest L so far:
 *
 *   fall        highest of the last max(breakDropWithinS, 1.5 intervals) − L >= breakDropShare P
 *               or L <= (1 − breakDropShare) P, most of the way down in sudden steps (a progressive failure)
 *   break       a fall that lasts: within postBreakS the load neither comes back to 0.9 P, nor is its mean after the fall
 *               above (1 − breakDropShare) of its mean before
 *   unloading   L stays below max(endShare P, threshold) for endHoldS without a fall, or is left hanging below 0.25 P
 *   none        P below 3 start thresholds, or below 40 of them and there all at once
 *
 * Peak: highest good sample up to the fall. Loading rate: loadingRate.ts. Checked: tests/domain/signal/loading/breakDetector.spec.ts, tests/domain/signal/loading/evaluateCurve.spec.ts, tests/reference/corpus.spec.ts.
 */
export function createLoadCurve(settings: DetectionSettings, recent: RecentSamples, start: LoadStart): LoadCurve {
  const { breakDropShare, postBreakS, endShare, endHoldS } = settings
  const { zero, threshold } = start
  const windowS = Math.max(settings.breakDropWithinS, dropIntervals * start.intervalS)
  const clipping = createClippingWatch(settings)
  const state = {
    peak: start.highest,
    peakS: start.highestS,
    peakOrdinal: -1,
    rate: Number.NaN,
    lowSinceS: Number.NaN,
    forgottenSinceS: Number.NaN,
    breakS: 0,
    before: 0,
    fallS: 0,
    afterSum: 0,
    afterCount: 0,
    afterLast: 0,
    postCount: 0,
    /** Above this share of the peak a load is neither fallen nor low. */
    clear: Math.max(1 - breakDropShare, endShare, forgottenShare),
    zero,
    threshold,
  }
  let fall: FallRecord | null = null
  let broken = false
  let over = false

  /** The slope before the peak is found when the samples before it are about to leave the ring. */
  function keepRate(): void {
    if (state.peakOrdinal < 0) return
    const slope = slopeBeforePeak(recent, state.peakOrdinal, start.noise)
    if (slope !== null) state.rate = slope
    state.peakOrdinal = -1
  }

  function push(timeS: number, force: number, reading: number): boolean {
    if (over) return true
    over = broken ? pushAfterFall(timeS, force) : pushLoading(timeS, force, reading)
    return over
  }

  function pushLoading(timeS: number, force: number, reading: number): boolean {
    if (force > state.peak) {
      state.peak = force
      state.peakS = timeS
      state.peakOrdinal = recent.count() - 1
    } else if (state.peakOrdinal >= 0 && recent.count() - state.peakOrdinal > rateWithin) keepRate()
    clipping.push(timeS, force, reading)
    const peakLoad = state.peak - zero
    const load = force - zero
    // Near the peak no rule can apply: this is the way of nearly every sample of a ramp.
    if (load > state.clear * peakLoad && load >= threshold && timeS - state.peakS < idleLoadS) {
      state.lowSinceS = Number.NaN
      state.forgottenSinceS = Number.NaN
      return false
    }
    if (peakLoad >= leastPeakThresholds * threshold && fell(force, peakLoad, load)) {
      beginFall(timeS, force)
      return false
    }
    return restsLow(timeS, load, peakLoad)
  }

  function take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): void {
    if (from >= to) return
    const peakAt = lastNewPeak(state, force, from, to)
    if (peakAt >= 0) {
      state.peak = force[peakAt]!
      state.peakS = timeS[peakAt]!
      state.peakOrdinal = recent.count() - (to - peakAt)
    }
    clipping.take(timeS, force, reading, from, to)
    state.lowSinceS = Number.NaN
    state.forgottenSinceS = Number.NaN
  }

  function fell(force: number, peakLoad: number, load: number): boolean {
    if (recent.windowHighest(windowS) - force >= breakDropShare * peakLoad) return true
    return load <= (1 - breakDropShare) * peakLoad && start.suddenFall() >= fastFallShare * (peakLoad - load)
  }

  function beginFall(timeS: number, force: number): void {
    keepRate()
    const before = Math.max(recent.windowHighest(windowS), force)
    let ordinal = recent.lastAtOrAbove((before + force) / 2)
    const falling = stillFallingShare * (before - force)
    while (recent.holds(ordinal - 1) && recent.forceAt(ordinal - 1) - recent.forceAt(ordinal) > falling) ordinal -= 1
    state.breakS = ordinal >= 0 ? recent.timeAt(ordinal) : state.peakS
    state.before = ordinal >= 0 ? recent.meanBefore(ordinal, beforeS, beforeSamples) : before
    state.fallS = timeS
    fall = beginFallRecord(recent, ordinal)
    state.afterSum = 0
    state.afterCount = 0
    state.postCount = 0
    state.afterLast = force
    broken = true
  }

  function pushAfterFall(timeS: number, force: number): boolean {
    const since = timeS - state.fallS
    const peakLoad = state.peak - zero
    state.postCount += 1
    state.afterLast = force
    if (since <= afterToS) fall?.push(timeS, force)
    if (since >= afterFromS && since <= afterToS) {
      state.afterSum += force
      state.afterCount += 1
    }
    if (force - zero >= recoveredShare * peakLoad) return resume(timeS, force)
    if (timeS - state.breakS < postBreakS || state.postCount < 2) return false
    if (afterBreak() - zero >= (1 - breakDropShare) * (state.before - zero)) return resume(timeS, force)
    return true
  }

  /** The fall did not last: the load goes on. */
  function resume(timeS: number, force: number): boolean {
    broken = false
    if (force > state.peak) {
      state.peak = force
      state.peakS = timeS
      state.peakOrdinal = recent.count() - 1
    }
    return false
  }

  const afterBreak = () => (state.afterCount > 0 ? state.afterSum / state.afterCount : state.afterLast)

  function restsLow(timeS: number, load: number, peakLoad: number): boolean {
    if (load >= Math.max(endShare * peakLoad, threshold)) state.lowSinceS = Number.NaN
    else if (Number.isNaN(state.lowSinceS)) state.lowSinceS = timeS
    else if (timeS - state.lowSinceS >= endHoldS) return true
    if (load >= forgottenShare * peakLoad) state.forgottenSinceS = Number.NaN
    else if (Number.isNaN(state.forgottenSinceS)) state.forgottenSinceS = timeS
    else if (timeS - state.forgottenSinceS >= forgottenS) return true
    const sincePeakS = timeS - state.peakS
    return sincePeakS >= longestHoldS || (sincePeakS >= idleLoadS && peakLoad < leastPeakThresholds * threshold)
  }

  function end(): LoadEnd {
    if (!broken) keepRate()
    const peakLoad = state.peak - zero
    const loadedS = start.firstReachedS(zero + loadedShare * peakLoad)
    const driven = loadedS - start.onsetS >= shortestLoadingS || peakLoad >= handledThresholds * threshold
    const loading = peakLoad >= leastPeakThresholds * threshold && driven
    const outcome = !loading ? 'none' : broken ? 'break' : 'unloading'
    return {
      outcome,
      peak: state.peak,
      peakS: state.peakS,
      breakS: outcome === 'break' ? state.breakS : null,
      afterBreak: outcome === 'break' ? afterBreak() : null,
      loadingRate: Number.isNaN(state.rate) ? null : state.rate,
      fallS: outcome === 'break' ? (fall?.fallS(zero, state.before, afterBreak()) ?? null) : null,
      clipping,
    }
  }

  function plainUntil(timeS: Float64Array, force: Float64Array, from: number, to: number): number {
    if (over || broken) return from
    // Where the peak stands in these arrays; behind their end it is never left far enough.
    const peakAt = state.peakOrdinal < 0 ? to : from + state.peakOrdinal - recent.count()
    return nearPeakUntil(state, peakAt, timeS, force, from, to)
  }

  return { push, plainUntil, take, peak: () => state.peak, end }
}

type NearPeak = { zero: number; threshold: number; clear: number; peak: number; peakS: number }

// The loops stand outside the closure, so that the compiler keeps one of each for all loadings.

/** Index of the first sample at which a load no longer stays near its peak, or leaves a peak far behind. */
function nearPeakUntil(
  load: NearPeak,
  oldPeakAt: number,
  timeS: Float64Array,
  force: Float64Array,
  from: number,
  to: number,
): number {
  const { zero, threshold, clear } = load
  let { peak, peakS } = load
  let peakAt = oldPeakAt
  let i = from
  for (; i < to; i++) {
    const value = force[i]!
    if (value > peak) {
      peak = value
      peakS = timeS[i]!
      peakAt = i
    } else if (i + 1 - peakAt > rateWithin) break
    const above = value - zero
    if (!(above > clear * (peak - zero) && above >= threshold && timeS[i]! - peakS < idleLoadS)) break
  }
  return i
}

/** Index of the highest sample above a peak, the first of equals; −1: none is above it. */
function lastNewPeak(load: NearPeak, force: Float64Array, from: number, to: number): number {
  let highest = load.peak
  let at = -1
  for (let i = from; i < to; i++) {
    const value = force[i]!
    if (value > highest) {
      highest = value
      at = i
    }
  }
  return at
}
