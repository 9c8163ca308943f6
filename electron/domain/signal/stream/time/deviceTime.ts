import { modulo } from '../../../numbers/modulo.ts'

/** The unit in which the device counts its time; µs and ms counters are 32 bits wide and wrap around. */
export type DeviceTimeUnit = 'us' | 'ms' | 's'

/** Turns a device's own counter into steps of time. */
export type DeviceTime = {
  /**
   * Step since the last reading that was taken, s; 0 for the first. NaN: leave the reading out (a duplicate, or out of
   * order). `numbered`: a sequence number has already shown that the reading is new.
   */
  step(deviceUs: number, sinceArrivalS: number, restarted: boolean, numbered: boolean): number
  /** The counter has begun anew since the last reading that was taken: the device was switched on just now. */
  beginsAnew(deviceUs: number, sinceArrivalS: number): boolean
  /** The last step was one to an earlier count: the device has restarted. */
  wentBack(): boolean
}

/** µs and ms counters are 32 bits wide. */
const counterWidthUs: Record<DeviceTimeUnit, number> = {
  us: 2 ** 32,
  ms: 2 ** 32 * 1000,
  s: Number.POSITIVE_INFINITY,
}
/** Device time that differs from arrival time by more than this in one step, s, was set anew. */
const longestStrangeStepS = 5
/** A counter that stands below this, µs, ... */
const justBegunUs = 10_000_000
/** ... and has fallen by more than this, µs, has begun anew. */
const leastFallUs = 1_000_000
const rateMemory = 1 / 256

/**
 * Unwraps the counter: step = (now − last) modulo the counter's width, taken as negative beyond half of it. The time goes on
 * by arrival where the step contradicts arrival by more than 5 s, where the counter begins anew, and with the second of two
 * readings from the past that follow each other: one alone is a line that came too late or was damaged.
 *
 * A millisecond counter is too coarse above some 100 Hz, so its readings advance by their mean step and are only kept
 * within the millisecond that the counter names.
 * Checked: tests/domain/signal/stream/time/deviceTime.spec.ts.
 */
export function createDeviceTime(unit: DeviceTimeUnit): DeviceTime {
  const width = counterWidthUs[unit]
  const state = { lastUs: Number.NaN, pastUs: Number.NaN, meanUs: 0, steps: 0, aheadUs: 0 }
  let back = false

  /** From the last reading that was taken, µs, across the counter's end. */
  function unwrapped(deviceUs: number): number {
    const stepUs = deviceUs - state.lastUs
    if (width === Number.POSITIVE_INFINITY) return stepUs
    const ahead = modulo(stepUs, width)
    return ahead > width / 2 ? ahead - width : ahead
  }

  const isStrange = (stepUs: number, sinceArrivalS: number) =>
    Math.abs(stepUs / 1e6 - sinceArrivalS) > longestStrangeStepS

  function beginsAnew(deviceUs: number, sinceArrivalS: number): boolean {
    if (!(state.lastUs - deviceUs > leastFallUs && deviceUs < justBegunUs)) return false
    const stepUs = unwrapped(deviceUs)
    return stepUs < 0 || isStrange(stepUs, sinceArrivalS)
  }

  function step(deviceUs: number, sinceArrivalS: number, restarted: boolean, numbered: boolean): number {
    back = false
    if (Number.isNaN(state.lastUs)) {
      state.lastUs = deviceUs
      return 0
    }
    const stepUs = unwrapped(deviceUs)
    back = stepUs < 0 || beginsAnew(deviceUs, sinceArrivalS)
    if (restarted || isStrange(stepUs, sinceArrivalS)) return restart(deviceUs, sinceArrivalS)
    if (back) {
      const follows = deviceUs > state.pastUs && deviceUs - state.pastUs < longestStrangeStepS * 1e6
      if (follows || beginsAnew(deviceUs, sinceArrivalS)) return restart(deviceUs, sinceArrivalS)
      state.pastUs = deviceUs
      return Number.NaN
    }
    if (stepUs === 0 && unit !== 'ms' && !numbered) return Number.NaN
    state.pastUs = Number.NaN
    state.lastUs = deviceUs
    return unit === 'ms' ? evenStep(stepUs) / 1e6 : stepUs / 1e6
  }

  function restart(deviceUs: number, sinceArrivalS: number): number {
    state.pastUs = Number.NaN
    state.lastUs = deviceUs
    state.aheadUs = 0
    return Math.max(sinceArrivalS, state.meanUs / 1e6)
  }

  /** `aheadUs`: how far the time handed out lies ahead of the counter, kept within its millisecond. */
  function evenStep(stepUs: number): number {
    state.steps += 1
    const usual = state.steps > 16 && stepUs > 4 * state.meanUs + 2000
    if (!usual) state.meanUs += (stepUs - state.meanUs) * Math.max(rateMemory, 1 / state.steps)
    const wanted = state.aheadUs + state.meanUs - stepUs
    const kept = Math.max(0, Math.min(999, wanted))
    const given = stepUs + kept - state.aheadUs
    state.aheadUs = kept
    return Math.max(1, given)
  }

  return { step, beginsAnew, wentBack: () => back }
}
