import type { Clock } from '#acquisition/clock.ts'
import type { LiveReading } from '#contract/calibration/calibrationRoutine.ts'
import { Trouble } from '#contract/errors.ts'
import { keptSoFar } from '#domain/calibration/calibrationRows.ts'
import { hasLoneOutlier } from '#domain/calibration/fit/loneOutlier.ts'
import { createSteadinessWatch, type Steadiness } from '#domain/signal/rest/steadiness.ts'

/** The mean of a window of readings that stood still. */
export type AveragedReading = { mean: number; sd: number; count: number; lowest: number; highest: number }

export type SteadyReadingOptions = {
  clock: Clock
  /** Length of the averaged window, s. */
  averageS: number
  /** Given up when the reading is not steady after so long, s. */
  steadyWithinS: number
  /** Anything that is shown has changed. */
  changed(): void
  done(reading: AveragedReading): void
  failed(trouble: Trouble): void
}

/** Waits until the signal stands still, then averages it. Ends by `done`, by `failed`, or by `stop`. */
export type SteadyReading = {
  push(timeS: number, reading: number): void
  averaging(): boolean
  live(): Omit<LiveReading, 'latest' | 'residualN'>
  stop(): void
}

const watchedS = 2
/** Steadiness is judged so often, s of the stream. */
const judgeEveryS = 0.1

/** Begins to wait for the readings that are pushed from now on. */
export function createSteadyReading(options: SteadyReadingOptions): SteadyReading {
  const { averageS, steadyWithinS } = options
  const watch = createSteadinessWatch({ windowS: watchedS, leastReadings: 5, allowedChange: 0 })
  let firstS = Number.NaN
  let lastS = Number.NaN
  let judgedS = Number.NEGATIVE_INFINITY
  let standing: Steadiness = watch.judge()
  let window: number[] | null = null
  let windowFromS = 0
  let over = false
  // Stream time stands still when nothing arrives, so the clock watches over the wait as well.
  const callOff = options.clock.after(steadyWithinS + averageS + watchedS, () => end(() => options.failed(notSteady())))

  function end(tell: () => void): void {
    if (over) return
    over = true
    callOff()
    tell()
  }

  function notSteady(): Trouble {
    if (Number.isNaN(firstS))
      return new Trouble(
        'not-connected',
        `No reading has arrived for ${steadyWithinS} s.`,
        `Look at cable and amplifier, then go on with this step. ${keptSoFar}`,
      )
    return new Trouble(
      'not-stable',
      `The reading did not become steady within ${steadyWithinS} s: ${standing.unsteadyBecause ?? 'single readings lie far from the others'}.`,
      `Let the weights hang still, keep hands off and draughts away, then go on with this step. ${keptSoFar}`,
    )
  }

  function finishWindow(values: number[]): void {
    const count = values.length
    const mean = values.reduce((sum, value) => sum + value, 0) / count
    let squares = 0
    let lowest = Number.POSITIVE_INFINITY
    let highest = Number.NEGATIVE_INFINITY
    for (const value of values) {
      squares += (value - mean) ** 2
      lowest = Math.min(lowest, value)
      highest = Math.max(highest, value)
    }
    standing = watch.judge()
    if (standing.unsteadyBecause !== null || hasLoneOutlier(values)) {
      window = null
      watch.reset()
      return
    }
    end(() => options.done({ mean, sd: Math.sqrt(squares / (count - 1)), count, lowest, highest }))
  }

  return {
    push(timeS, reading) {
      if (over) return
      if (Number.isNaN(firstS)) firstS = timeS
      lastS = timeS
      watch.push(timeS, reading)
      if (window !== null) {
        window.push(reading)
        if (timeS - windowFromS >= averageS && window.length >= 2) finishWindow(window)
        options.changed()
        return
      }
      if (timeS - judgedS < judgeEveryS) return
      judgedS = timeS
      standing = watch.judge()
      if (standing.unsteadyBecause === null) {
        window = []
        windowFromS = timeS
      } else if (timeS - firstS > steadyWithinS) end(() => options.failed(notSteady()))
      options.changed()
    },
    averaging: () => window !== null,
    live() {
      const { mean, sd, readings } = standing
      const averaged = window !== null && window.length > 0 ? window : null
      return {
        mean: averaged === null ? mean : averaged.reduce((sum, value) => sum + value, 0) / averaged.length,
        sd,
        count: averaged?.length ?? readings,
        unsteadyBecause: window === null ? standing.unsteadyBecause : null,
        waitedS: Number.isNaN(firstS) ? 0 : lastS - firstS,
        averagedShare: window === null ? 0 : Math.min(1, Math.max(0, (lastS - windowFromS) / averageS)),
      }
    },
    stop: () => end(() => {}),
  }
}
