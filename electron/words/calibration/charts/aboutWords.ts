import { countOf } from '../../units/counts.ts'
import { dayWords } from '../../units/times.ts'

/** Which calibration a figure shows. */
export function calibrationAbout(calibration: { calibrationId: number; name: string; madeAt: string }): string {
  const { calibrationId, name, madeAt } = calibration
  return `Calibration ${calibrationId}, “${name}”, ${dayWords(madeAt)}.`
}

/** Which checks a control chart shows. */
export function checksAbout(history: { calibrationId: number; weight: string }): string {
  return `Checks of ${history.weight} under calibration ${history.calibrationId}.`
}

/** Which calibrations a chart of drift shows, oldest first. Throws RangeError without one. */
export function driftAbout(calibrations: readonly { name: string }[]): string {
  const [first, last] = [calibrations[0], calibrations.at(-1)]
  if (first === undefined || last === undefined) throw new RangeError('driftAbout requires a calibration')
  return `${countOf(calibrations.length, 'calibration')}, “${first.name}” to “${last.name}”.`
}
