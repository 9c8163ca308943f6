import { creepFromS } from '#domain/calibration/steps/creep.ts'

/** The reading of a load early and late, each a mean of a short window about its time. */
export type HeldReadings = { fromS: number; toS: number; fromReading: number; toReading: number }

/** Watches a load that stays on the cell, in constant memory. */
export type LoadHold = {
  push(timeS: number, reading: number): void
  /** 0 to 1. */
  share(): number
  over(): boolean
  /** null: the signal was away at one of the two times. */
  held(): HeldReadings | null
}

/** A longer average would blur the two times. */
const longestAverageS = 10

/** Begins with the first sample that is pushed: the load hangs from then on. */
export function createLoadHold(holdS: number, averageS: number): LoadHold {
  const half = Math.min(averageS, longestAverageS) / 2
  const early = { sum: 0, count: 0 }
  const late = { sum: 0, count: 0 }
  let firstS = Number.NaN
  let elapsedS = 0

  function add(window: { sum: number; count: number }, centreS: number, reading: number): void {
    if (Math.abs(elapsedS - centreS) > half) return
    window.sum += reading
    window.count += 1
  }

  return {
    push(timeS, reading) {
      if (Number.isNaN(firstS)) firstS = timeS
      elapsedS = timeS - firstS
      add(early, creepFromS, reading)
      add(late, holdS, reading)
    },
    share: () => Math.min(1, elapsedS / (holdS + half)),
    over: () => elapsedS > holdS + half,
    held() {
      if (early.count === 0 || late.count === 0) return null
      return {
        fromS: creepFromS,
        toS: holdS,
        fromReading: early.sum / early.count,
        toReading: late.sum / late.count,
      }
    },
  }
}
