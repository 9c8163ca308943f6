import type { CalibrationDrift } from '#contract/calibration/calibrationRecords.ts'
import type { Quantity } from '../units/quantities.ts'

/** The temperature while it was calibrated, or that nobody wrote it down. */
export function temperatureWords(
  drift: Pick<CalibrationDrift, 'temperatureStartC' | 'temperatureEndC' | 'temperatureNote'>,
  temperature: Quantity,
): string {
  const { temperatureStartC: start, temperatureEndC: end, temperatureNote: note } = drift
  const known = [start, end].filter((value) => value !== null).map((value) => temperature.number(value))
  const degrees = [...new Set(known)].join(' to ')
  const words = degrees === '' ? '' : `${degrees} ${temperature.unit}`
  return [words, note].filter((part) => part !== '').join(', ') || '–'
}
