import type { CalibrationDrift } from '#contract/calibration/calibrationRecords.ts'
import { writeFixed } from '../units/numbers.ts'

/** The temperature while it was calibrated, or that nobody wrote it down. */
export function temperatureWords(
  drift: Pick<CalibrationDrift, 'temperatureStartC' | 'temperatureEndC' | 'temperatureNote'>,
): string {
  const { temperatureStartC: start, temperatureEndC: end, temperatureNote: note } = drift
  const known = [start, end].filter((value) => value !== null).map((value) => writeFixed(value, 1))
  const degrees = [...new Set(known)].join(' to ')
  const words = degrees === '' ? '' : `${degrees} °C`
  return [words, note].filter((part) => part !== '').join(', ') || '–'
}
