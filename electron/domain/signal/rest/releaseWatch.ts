/** After a break: waits until the broken faces no longer carry load, so that their friction starts no capture. */
export type ReleaseWatch = {
  /** Takes samples; returns the index of the first from which the bench may be watched for a loading again, `to`: none yet. */
  take(timeS: Float64Array, force: Float64Array, from: number, to: number): number
}

/** The force has been back near its zero for this long, s, and so many samples. */
const nearZeroS = 0.2
const nearZeroSamples = 3
/** A force that stands still for this long, s, is a new zero: the break has shifted it, or debris lies on the cell. */
const newZeroS = 3
/** Standing still: within so many noise SDs, half a start threshold or this share of the last peak (a quiet cell drifts too). */
const stillNoiseMultiple = 10
const stillThresholdShare = 0.5
const stillPeakShare = 0.002
/** Near zero: within the start threshold or this share of the last peak; friction carries more. */
const nearPeakShare = 0.005
/** A load above this share of the last peak is no friction but a loading. */
const loadedAgainShare = 0.6
const loadedAgainSamples = 3

/** The rules above, for a break at `zero` with a peak of `peak`. Checked: tests/domain/signal/rest/releaseWatch.spec.ts. */
export function createReleaseWatch(broken: {
  zero: number
  peak: number
  threshold: number
  noise: number
}): ReleaseWatch {
  const { zero, peak, threshold, noise } = broken
  const load = peak - zero
  const stillWithin = Math.max(stillNoiseMultiple * noise, stillThresholdShare * threshold, stillPeakShare * load)
  const nearWithin = Math.max(threshold, nearPeakShare * load)
  const loadedAgain = zero + loadedAgainShare * load
  const state = { nearS: 0, near: 0, high: 0, stillS: 0, lowest: 0, highest: 0 }
  let watching = false

  function released(timeS: number, force: number): boolean {
    if (Math.abs(force - zero) > nearWithin) state.near = 0
    else {
      if (state.near === 0) state.nearS = timeS
      state.near += 1
      if (state.near >= nearZeroSamples && timeS - state.nearS >= nearZeroS) return true
    }
    state.high = force > loadedAgain ? state.high + 1 : 0
    if (state.high >= loadedAgainSamples) return true
    const lowest = Math.min(state.lowest, force)
    const highest = Math.max(state.highest, force)
    if (!watching || highest - lowest > stillWithin) {
      watching = true
      state.stillS = timeS
      state.lowest = force
      state.highest = force
      return false
    }
    state.lowest = lowest
    state.highest = highest
    return timeS - state.stillS >= newZeroS
  }

  return {
    take(timeS, force, from, to) {
      for (let i = from; i < to; i++) if (released(timeS[i]!, force[i]!)) return i
      return to
    },
  }
}
