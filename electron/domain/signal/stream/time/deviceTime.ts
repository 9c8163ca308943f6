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
}

/** µs and ms counters are 32 bits wide. */
const wrapUs: Record<DeviceTimeUnit, number> = { us: 2 ** 32, ms: 2 ** 32 * 1000, s: Number.POSITIVE_INFINITY }
/** Device time that differs from arrival time by more than this in one step, s, was set anew. */
const longestStrangeStepS = 5
/** So many readings in a row from the past: the counter has restarted. */
const restartReadings = 8
const rateMemory = 1 / 256

/**
 * Unwraps the counter: step = (now − last) modulo the counter's width, taken as negative beyond half of it. A step that
 * arrival time contradicts by more than 5 s, or eight readings from the past, is a restart; then the time goes on by
 * arrival.
 *
 * A millisecond counter is too coarse above some 100 Hz, so its readings advance by their mean step and are only kept
 * within the millisecond that the counter names.
 * Checked: tests/domain/signal/stream/time/deviceTime.spec.ts.
 */
export function createDeviceTime(unit: DeviceTimeUnit): DeviceTime {
  const width = wrapUs[unit]
  const state = { lastUs: Number.NaN, backwards: 0, coarseUs: 0, meanUs: 0, steps: 0, aheadUs: 0 }

  function step(deviceUs: number, sinceArrivalS: number, restarted: boolean, numbered: boolean): number {
    if (Number.isNaN(state.lastUs)) {
      state.lastUs = deviceUs
      return 0
    }
    let stepUs = deviceUs - state.lastUs
    if (width !== Number.POSITIVE_INFINITY) {
      stepUs = modulo(stepUs, width)
      if (stepUs > width / 2) stepUs -= width
    }
    const strange = Math.abs(stepUs / 1e6 - sinceArrivalS) > longestStrangeStepS
    if (restarted || strange) return restart(deviceUs, sinceArrivalS)
    if (stepUs < 0) {
      state.backwards += 1
      return state.backwards < restartReadings ? Number.NaN : restart(deviceUs, sinceArrivalS)
    }
    if (stepUs === 0 && unit !== 'ms' && !numbered) return Number.NaN
    state.backwards = 0
    state.lastUs = deviceUs
    return unit === 'ms' ? evenStep(stepUs) / 1e6 : stepUs / 1e6
  }

  function restart(deviceUs: number, sinceArrivalS: number): number {
    state.backwards = 0
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

  return { step }
}
