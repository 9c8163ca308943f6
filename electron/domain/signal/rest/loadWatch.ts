import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { CurveHead } from './curveHead.ts'
import { createIdleNoise } from './idleNoise.ts'

/** Watches a bench at rest for the start of a loading. */
export type LoadWatch = {
  begin(head: CurveHead, firstTimeS: number): void
  /** Takes the next good sample; true when it completes the start of a loading. */
  push(timeS: number, force: number): boolean
  /** Noise SD of the signal at rest, null while none was seen. */
  noise(): number | null
  /** The noise SD at rest is a step of the converter or more, so that hardly two samples in a row are equal. */
  isNoisy(): boolean
  /** What stands for the noise SD in every threshold: the noise at rest, or half the resolution where that is more. */
  sigma(): number
  /** How far above the level at rest loading starts. */
  threshold(): number
  level(): number
  /** First sample after the last one that was no different from rest. */
  onsetS(): number
  /** Highest sample since the threshold was crossed, and its time. */
  highest(): number
  highestS(): number
  /** The newest sample is like those at rest. */
  restful(): boolean
}

/** Even at slow rates so many samples in a row must lie above the threshold. */
const leastHoldSamples = 4
/** A load grows or stays; a knock has lost more than this by the end of the hold. */
const keptShareOfHold = 0.6
/**
 * A sample so many thresholds above the level is a knock or a load, and spoils the block of noise. One that is not only
 * stays out of it: were every block dropped in which noise passes a threshold that is too low, it would stay too low.
 */
const knockThresholds = 2
/** The force is no different from rest while its running mean over this time, s, ... */
const restMeanS = 0.02
/** ... lies within so many of its own SDs of the level, and a noise SD at least. */
const restNoiseMultiple = 2
/** Where the converter's steps are coarser than the noise, half a step stands for the noise SD. */
const noisePerResolution = 0.5
/** The level at rest may rise by one threshold in this time, s: slow enough not to swallow a slow press. */
const levelRiseS = 60
/** A step in time this long starts the hold anew, s. */
const longestStepInHoldS = 1

/** Of white noise the running mean with weight w has SD σ sqrt(w / (2 − w)). */
const restLimit = (weight: number) => Math.max(1, restNoiseMultiple * Math.sqrt(weight / (2 - weight)))

/**
 * Loading starts when the force has stayed above level + threshold for `startHoldS` and 4 samples, and has not fallen
 * off meanwhile.
 *
 *   threshold = startThresholdN, or else max(startNoiseMultiple × σ, startCapacityShare × capacity)
 *   σ         = max(noise SD at rest, half the resolution)
 *
 * Checked: tests/domain/signal/rest/loadWatch.spec.ts.
 */
export function createLoadWatch(settings: DetectionSettings): LoadWatch {
  const { startThresholdN, startNoiseMultiple, startHoldS, capacityN, startCapacityShare } = settings
  const idle = createIdleNoise()
  const capacityShare = capacityN === null ? 0 : startCapacityShare * capacityN
  const state = {
    sigma: Number.NaN,
    threshold: Number.NaN,
    onsetS: Number.NaN,
    lastRestful: false,
    mean: 0,
    rested: false,
    holdStartS: Number.NaN,
    holdCount: 0,
    highest: Number.NaN,
    highestS: Number.NaN,
    lastS: Number.NaN,
  }
  let atRest = false
  /** With the next sample it counts. */
  let isNoiseNew = false

  function refresh(): void {
    state.sigma = Math.max(idle.noise(), noisePerResolution * idle.resolution())
    state.threshold = startThresholdN ?? Math.max(startNoiseMultiple * state.sigma, capacityShare)
    idle.setRisePerS(state.threshold / levelRiseS)
  }

  function push(timeS: number, force: number): boolean {
    if (idle.see(force) || isNoiseNew) refresh()
    isNoiseNew = false
    const above = force - idle.level()
    const step = timeS - state.lastS
    state.lastS = timeS
    const weight = Math.min(1, step / restMeanS)
    state.mean += (above - state.mean) * weight
    if (above > state.threshold && !(state.holdCount > 0 && step > longestStepInHoldS)) return hold(timeS, force, above)
    state.holdCount = 0
    isNoiseNew = idle.push(timeS, force)
    const restful = state.mean <= state.sigma * restLimit(weight)
    if (restful) state.rested = true
    follow(timeS, restful)
    return false
  }

  /** A sample above the threshold; true when it has been so for long enough. */
  function hold(timeS: number, force: number, above: number): boolean {
    if (state.holdCount === 0) state.holdStartS = timeS
    if (state.holdCount === 0 || force > state.highest) {
      state.highest = force
      state.highestS = timeS
    }
    if (above > knockThresholds * state.threshold) idle.dropBlock()
    follow(timeS, false)
    state.holdCount += 1
    return (
      state.holdCount >= leastHoldSamples &&
      timeS - state.holdStartS >= startHoldS &&
      above >= keptShareOfHold * (state.highest - idle.level())
    )
  }

  /** The onset is the first sample after the last restful one. */
  function follow(timeS: number, restful: boolean): void {
    if (state.lastRestful && !restful) state.onsetS = timeS
    state.lastRestful = restful
  }

  return {
    begin(head, firstTimeS) {
      atRest = head.atRest
      idle.begin(head.noise, head.level)
      state.onsetS = firstTimeS
      state.lastS = firstTimeS
      refresh()
    },
    push,
    noise: () => (atRest || state.rested ? idle.noise() : null),
    isNoisy: () => idle.resolution() > 0 && idle.noise() >= idle.resolution(),
    sigma: () => state.sigma,
    threshold: () => state.threshold,
    level: () => idle.level(),
    onsetS: () => state.onsetS,
    highest: () => state.highest,
    highestS: () => state.highestS,
    restful: () => state.lastRestful,
  }
}
