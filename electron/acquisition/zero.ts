import { Trouble } from '#contract/errors.ts'
import type { Tare } from '#contract/records/force.ts'
import { createSteadinessWatch, type Steadiness } from '#domain/signal/steadiness.ts'
import type { Clock } from './clock.ts'

/** The zero of the bench: taken by hand, or by itself when nothing speaks against it. */
export type Zero = {
  /** Force before tare. */
  push(timeS: number, force: number): void
  tare(): Tare | null
  judge(): Steadiness
  /** Takes the zero now. Throws Trouble `not-stable` with the reason. */
  take(): Tare
  /** Takes the zero if the bench is steady and it is due; null when it is not. */
  takeIfDue(startThreshold: number | null): Tare | null
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

/** No zero yet: it is taken as soon as the signal is steady. */
export function createZero(clock: Clock): Zero {
  const watch = createSteadinessWatch()
  let tare: Tare | null = null
  let takenAtS = 0
  let isDue = false

  function takeFrom({ mean, sd, readings }: Steadiness): Tare {
    tare = { offset: mean!, sd: sd!, readings, takenAt: clock.instant() }
    takenAtS = clock.nowS()
    isDue = false
    return tare
  }

  return {
    push: watch.push,
    tare: () => tare,
    judge: watch.judge,
    take() {
      const steadiness = watch.judge()
      if (steadiness.unsteadyBecause !== null)
        throw new Trouble(
          'not-stable',
          `The zero cannot be taken: ${steadiness.unsteadyBecause}.`,
          'Take the load off, keep hands off the bench, and try again in a second.',
        )
      return takeFrom(steadiness)
    },
    takeIfDue(startThreshold) {
      const followsDrift = clock.nowS() - takenAtS >= followEveryS
      if (tare !== null && !isDue && !followsDrift) return null
      const steadiness = watch.judge()
      if (steadiness.unsteadyBecause !== null) return null
      if (tare === null) return takeFrom(steadiness)
      if (startThreshold === null) return null
      const share = Math.abs(steadiness.mean! - tare.offset) / startThreshold
      return share < emptyShare && (isDue || share > followFromShare) ? takeFrom(steadiness) : null
    },
    dueAfterCapture() {
      isDue = true
    },
    restart() {
      watch.reset()
      isDue = tare !== null
    },
    forget() {
      watch.reset()
      tare = null
      isDue = false
    },
  }
}
