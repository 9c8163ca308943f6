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
  const near = { sinceS: Number.NaN, samples: 0 }
  const still = { sinceS: Number.NaN, lowest: Number.NaN, highest: Number.NaN }
  let high = 0

  function released(timeS: number, force: number): boolean {
    if (Math.abs(force - zero) > nearWithin) near.samples = 0
    else {
      if (near.samples === 0) near.sinceS = timeS
      near.samples += 1
      if (near.samples >= nearZeroSamples && timeS - near.sinceS >= nearZeroS) return true
    }
    high = force > loadedAgain ? high + 1 : 0
    if (high >= loadedAgainSamples) return true
    still.lowest = Math.min(still.lowest, force)
    still.highest = Math.max(still.highest, force)
    if (still.highest - still.lowest <= stillWithin) return timeS - still.sinceS >= newZeroS
    still.sinceS = timeS
    still.lowest = force
    still.highest = force
    return false
  }

  return {
    take(timeS, force, from, to) {
      for (let i = from; i < to; i++) if (released(timeS[i]!, force[i]!)) return i
      return to
    },
  }
}
