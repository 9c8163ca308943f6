import type { CalibrationReading, LoadDirection } from '#contract/calibration/reading.ts'

export const directionWords: Record<LoadDirection, string> = { up: 'going up', down: 'going down' }

export const standingWords: Record<CalibrationReading['standing'], string> = {
  used: 'used',
  replaced: 'replaced by a later one',
  'broken-off': 'of a run that was stopped early',
}
