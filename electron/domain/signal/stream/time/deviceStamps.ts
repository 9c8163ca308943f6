// Held by tests/domain/signal/stream/time/sampleClock.spec.ts.
import type { ClockCourse } from './clockCourse.ts'
import { createDeviceTime, type DeviceTimeUnit } from './deviceTime.ts'

/** Gives readings the time that their device has counted. */
export type DeviceStamps = {
  /** Time of a reading, s; NaN: it came twice or too late. */
  stamp(deviceUs: number, sequence: number, arrivalS: number): number
}

/** No reading yet. */
export function createDeviceStamps(course: ClockCourse, unit: DeviceTimeUnit): DeviceStamps {
  const { stream, numbers } = course
  const device = createDeviceTime(unit)

  function leaveOut(): number {
    course.leftOut += 1
    return Number.NaN
  }

  return {
    stamp(deviceUs, sequence, arrivalS) {
      const sinceArrivalS = Math.max(0, arrivalS - course.lastArrivalS)
      const passed = numbers.passed(sequence, device.beginsAnew(deviceUs, sinceArrivalS))
      if (passed <= 0) return leaveOut()
      const setAnew = Number.isNaN(passed) || course.isCut
      const numbered = !Number.isNaN(sequence)
      const stepS = device.step(deviceUs, sinceArrivalS, setAnew, numbered)
      if (Number.isNaN(stepS)) return leaveOut()
      const hasRestarted = device.wentBack() && !course.isCut
      course.isCut = false
      // Of readings that were left out arrival says nothing: a restart is timed from the last one that counted.
      course.lastArrivalS = arrivalS
      if (Number.isNaN(stream.lastS())) return stream.first()
      const wantedS = stream.lastS() + stepS
      if (hasRestarted) return course.tellRestart(stream.advance(wantedS, 0))
      return stream.advance(wantedS, numbered && !setAnew ? passed - 1 : Number.NaN)
    },
  }
}
