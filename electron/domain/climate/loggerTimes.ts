import type { ZoneClock } from './zoneClock.ts'

/** Why the time of a row is none that a series can take. */
export type TimeFault = 'none-shown' | 'shown-before' | 'back' | 'ahead' | 'to-come'

export type LoggerTimes = {
  /** Seconds since 1970, UTC; NaN where there is a fault. */
  readonly timeS: Float64Array
  readonly faults: ReadonlyMap<
    number,
    { fault: TimeFault /** The place of the row that it contradicts. */; other: number | null }
  >
  /** The newest stands first, and the times were taken from the end. */
  readonly newestFirst: boolean
}

/**
 * Instants of the rows of a logger from what its clock showed, in seconds as if it stood at UTC; `aheadS`: how far ahead of UTC the
 * row itself says that it was, NaN where it says nothing. Times rise: a row that shows no later time than one before it is
 * left out, and one that shows a later time than the two that follow, which themselves go on, is left out instead of them. An hour
 * that a clock shows twice is taken in order. Nothing may lie after `nowS`. Checked: tests/domain/climate/loggerTimes.spec.ts.
 */
export function loggerTimes(shownS: Float64Array, aheadS: Float64Array, clock: ZoneClock, nowS: number): LoggerTimes {
  const count = shownS.length
  const newestFirst = count > 1 && shownS[0]! > shownS[count - 1]!
  const timeS = new Float64Array(count).fill(Number.NaN)
  const faults = new Map<number, { fault: TimeFault; other: number | null }>()
  const instantsOf = (i: number) => (Number.isNaN(aheadS[i]!) ? clock(shownS[i]!) : [shownS[i]! - aheadS[i]!])
  const placeOf = (step: number) => (newestFirst ? count - 1 - step : step)
  let last = Number.NEGATIVE_INFINITY
  let lastPlace: number | null = null
  const instantsAt = (step: number) => (step < count ? instantsOf(placeOf(step)) : [])
  let instants = instantsAt(0)
  let next = instantsAt(1)
  for (let step = 0; step < count; step++) {
    const place = placeOf(step)
    const afterNext = instantsAt(step + 2)
    const taken = instants.find((one) => one > last)
    const spoilt = (fault: TimeFault, other: number | null) => faults.set(place, { fault, other })
    if (instants.length === 0) spoilt('none-shown', null)
    else if (taken === undefined) spoilt(instants.includes(last) ? 'shown-before' : 'back', lastPlace)
    else if (taken > nowS) spoilt('to-come', null)
    else if (isAhead(taken, last, next, afterNext)) spoilt('ahead', placeOf(step + 1))
    else {
      timeS[place] = taken
      last = taken
      lastPlace = place
    }
    instants = next
    next = afterNext
  }
  return { timeS, faults, newestFirst }
}

/** Whether the next two rows both go on from the last one, and lie before this. */
function isAhead(taken: number, last: number, next: readonly number[], afterNext: readonly number[]): boolean {
  const lieBefore = (instants: readonly number[]) =>
    instants.some((one) => one > last && one < taken) && instants.every((one) => one < taken)
  return lieBefore(next) && lieBefore(afterNext)
}
