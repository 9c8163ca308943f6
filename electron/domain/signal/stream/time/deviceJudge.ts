import type { DeviceFault } from '#contract/bench/bench.ts'
import type { DeviceTimeUnit } from './deviceTime.ts'

/** Watches whether the times and numbers that a device gives its readings can be times and numbers. */
export type DeviceJudge = {
  /** Looks at readings [from, to) that arrived together. */
  see(deviceTimeUs: Float64Array, sequence: Float64Array, from: number, to: number, arrivalS: number): void
  /** False: no time of this device means anything. */
  trustsTime(): boolean
  /** False: no number of this device means anything. */
  trustsSequence(): boolean
  faults(): readonly DeviceFault[]
  /** Another device may be there now: it is trusted again. */
  reset(): void
}

/** Judged is what came in so long, s, and so many readings. */
const windowS = 1
const leastReadings = 8
/** After a silence of the line this long, s, the pace of a window says nothing: it begins anew. */
const silenceS = 3
/** A time that stands still in this share of the steps tells nothing from one reading to the next ... */
const timeStandsShare = 0.45
/** ... numbers may, where a device sends each line twice. */
const sequenceStandsShare = 0.75
/** What falls in this share of the steps does not count on: random numbers fall in half of them. */
const fallsShare = 0.25
/** A clock this many times slower than arrival is in another unit: between µs, ms and s lie a thousand. */
const slowestPace = 1 / 30
/**
 * ... over so long, s. A computer that stands still for a moment makes a device wait that heeds the line: a clock that runs for a
 * tenth of a second in this time has waited, one in another unit is as slow as before.
 */
const slowWindowS = 3
/** ... and this many times faster. A recording in µs may be played a thousand times as fast as it was taken. */
const fastestPace: Record<DeviceTimeUnit, number> = { us: 3000, ms: 300, s: 300 }

/**
 * Counts over windows of a second of arrival, 8 readings at least. Of the steps from one reading to the next:
 *
 *   stands   time equal in 0.45 of them (a millisecond counter: in all of them), number equal in 0.75
 *   falls    time or number lower in a quarter of them
 *   pace     device time over arrival time, above 300 (a µs counter: 3000), or below 1/30 still after three seconds
 *
 * Limits: common practice, no source. Constant memory, nothing allocated but once a window.
 * Checked: tests/domain/signal/stream/time/deviceJudge.spec.ts.
 */
export function createDeviceJudge(unit: DeviceTimeUnit): DeviceJudge {
  const newest = { us: Number.NaN, sequence: Number.NaN, arrivalS: Number.NaN }
  let window = newWindow(Number.NaN, Number.NaN)
  let faults: DeviceFault[] = []
  let time = true
  let numbers = true

  function follow(us: number, sequence: number): void {
    newest.us = us
    newest.sequence = sequence
  }

  /** Steps of time and number that do not both go up. */
  function countOdd(stepUs: number, step: number): void {
    const isNewNumber = !(numbers && step === 0)
    if (!isNewNumber) window.stood += 1
    else if (step < 0) window.fell += 1
    // A line that came twice says nothing of the clock.
    if (stepUs === 0 && isNewNumber) window.timeStood += 1
    else if (stepUs < 0) window.timeFell += 1
  }

  /** False: the window has to go on. */
  function judge(us: number, elapsedS: number): boolean {
    if (numbers) judgeNumbers()
    return !time || Number.isNaN(us) || judgeTime(us, elapsedS)
  }

  function judgeNumbers(): void {
    if (window.stood >= sequenceStandsShare * window.steps) add('sequence-stands', null)
    else if (window.fell >= fallsShare * window.steps) add('sequence-falls', null)
  }

  function judgeTime(us: number, elapsedS: number): boolean {
    const passedUs = us - window.firstUs
    const pace = passedUs / 1e6 / elapsedS
    // Above a kilohertz a millisecond counter stands still between most readings, as it must.
    const stands = unit !== 'ms' && window.timeStood >= timeStandsShare * window.steps
    if (stands || passedUs === 0) add('time-stands', null)
    else if (window.timeFell >= fallsShare * window.steps) add('time-falls', null)
    // Where the counter ends or the device restarts a window has no pace.
    else if (window.timeFell > 0) return true
    else if (pace > fastestPace[unit]) add('time-fast', pace)
    else if (pace < slowestPace) {
      if (elapsedS < slowWindowS) return false
      add('time-slow', pace)
    }
    return true
  }

  function add(kind: DeviceFault['kind'], pace: number | null): void {
    faults = [...faults, { kind, pace }]
    if (kind === 'sequence-stands' || kind === 'sequence-falls') numbers = false
    else time = false
  }

  return {
    see(deviceTimeUs, sequence, from, to, arrivalS) {
      if (from >= to) return
      // NaN: there is no time, or no number.
      if (Number.isNaN(deviceTimeUs[from]!) && Number.isNaN(sequence[from]!)) return
      const silent = !(arrivalS - newest.arrivalS <= silenceS)
      if (silent) window = newWindow(deviceTimeUs[from]!, arrivalS)
      const first = silent ? from + 1 : from
      if (silent) follow(deviceTimeUs[from]!, sequence[from]!)
      let { us, sequence: number } = newest
      for (let i = first; i < to; i++) {
        countOdd(deviceTimeUs[i]! - us, sequence[i]! - number)
        us = deviceTimeUs[i]!
        number = sequence[i]!
      }
      follow(us, number)
      newest.arrivalS = arrivalS
      window.steps += to - first
      const elapsedS = arrivalS - window.startS
      if (elapsedS < windowS || window.steps < leastReadings) return
      if (judge(newest.us, elapsedS)) window = newWindow(newest.us, arrivalS)
    },
    trustsTime: () => time,
    trustsSequence: () => numbers,
    faults: () => faults,
    reset() {
      newest.arrivalS = Number.NaN
      faults = []
      time = true
      numbers = true
    },
  }
}

function newWindow(firstUs: number, startS: number) {
  return { startS, firstUs, steps: 0, timeStood: 0, timeFell: 0, stood: 0, fell: 0 }
}
