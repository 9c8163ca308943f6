import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { Tare } from '#contract/calibration/forceScale.ts'
import { Trouble } from '#contract/errors.ts'
import { createSteadinessWatch, type Steadiness } from '#domain/signal/rest/steadiness.ts'
import { createZeroBounds } from '#domain/signal/rest/zeroBounds.ts'
import type { Clock } from './clock.ts'

/** The zero of the bench: taken by hand, or by itself when nothing speaks against it. */
export type Zero = {
  /** Takes samples [from, to) of arrays: force before tare, and readings as they were received. */
  take(timeS: Float64Array, force: Float64Array, readings: Float64Array, from: number, to: number): void
  tare(): Tare | null
  /** Unsteady is also what stands still where no zero can be. */
  judge(): Steadiness
  /** Takes the zero now. Throws Trouble `not-stable` with the reason. */
  tareNow(): Tare
  /** Takes the zero if the bench is steady and it is due; null when it is not. */
  tareIfDue(startThreshold: number | null): Tare | null
  /** A capture is over: the zero is due as soon as the bench is empty and steady. */
  dueAfterCapture(): void
  /** The stream was cut: the newest readings say nothing any more. The zero is kept. */
  restart(): void
  /** The scale is another one: the old zero means nothing. */
  forget(): void
}

/** A drift is followed at most so often, s ... */
const followEveryS = 10
/** ... when it is more than this share of the start threshold, and less than that: more is a load. */
const followFromShare = 0.1
const emptyShare = 0.5
/** By itself the zero is only taken anew from a signal hardly noisier than the one it was taken from ... */
const noisierThanBefore = 2
/** ... and that has been so for this long, s: what is left of a release has then gone out of the watched window. */
const settledS = 1

/**
 * No zero yet: it is taken as soon as the signal is steady and within bounds. `capacityN` is asked for each time, as there
 * may be no force yet; null: no bound to offset and noise.
 */
export function createZero(
  clock: Clock,
  { endCodes, capacityN }: Pick<DetectionSettings, 'endCodes'> & { capacityN(): number | null },
): Zero {
  const watch = createSteadinessWatch()
  const bounds = createZeroBounds({ endCodes })
  let tare: Tare | null = null
  // Times of the stream, which a device may send faster than the clock of the wall goes.
  let nowS = 0
  let takenAtS = 0
  let isDue = false
  let fittingSinceS: number | null = null

  function judge(): Steadiness {
    const steadiness = watch.judge()
    const refusal = bounds.refusal(steadiness, capacityN())
    return refusal === null ? steadiness : { ...steadiness, unsteadyBecause: refusal.because }
  }

  function takeFrom({ mean, sd, readings }: Steadiness): Tare {
    tare = { offset: mean!, sd: sd!, readings, takenAt: clock.instant() }
    takenAtS = nowS
    isDue = false
    fittingSinceS = null
    return tare
  }

  /** Steady, near the zero so far, and different enough from it (or due anyway). */
  function fits({ unsteadyBecause, mean, sd }: Steadiness, old: Tare, startThreshold: number | null): boolean {
    if (unsteadyBecause !== null || startThreshold === null || sd! > noisierThanBefore * old.sd) return false
    const share = Math.abs(mean! - old.offset) / startThreshold
    return share < emptyShare && (isDue || share > followFromShare)
  }

  return {
    take(timeS, force, readings, from, to) {
      bounds.see(timeS, readings, from, to)
      for (let i = from; i < to; i++) watch.push(timeS[i]!, force[i]!)
      if (to > from) nowS = timeS[to - 1]!
    },
    tare: () => tare,
    judge,
    tareNow() {
      const newest = watch.judge()
      const refusal = bounds.refusal(newest, capacityN())
      const because = refusal?.because ?? newest.unsteadyBecause
      if (because === null) return takeFrom(newest)
      throw new Trouble(
        'not-stable',
        `The zero cannot be taken: ${because}.`,
        refusal?.advice ?? 'Take the load off, keep hands off the bench, and try again in a second.',
      )
    },
    tareIfDue(startThreshold) {
      const followsDrift = nowS - takenAtS >= followEveryS
      if (tare !== null && !isDue && !followsDrift) return null
      const steadiness = judge()
      if (tare === null) return steadiness.unsteadyBecause === null ? takeFrom(steadiness) : null
      if (!fits(steadiness, tare, startThreshold)) {
        fittingSinceS = null
        return null
      }
      fittingSinceS ??= nowS
      return nowS - fittingSinceS >= settledS ? takeFrom(steadiness) : null
    },
    dueAfterCapture() {
      isDue = true
      fittingSinceS = null
    },
    restart() {
      watch.reset()
      bounds.reset()
      isDue = tare !== null
      fittingSinceS = null
    },
    forget() {
      watch.reset()
      bounds.reset()
      tare = null
      isDue = false
    },
  }
}
