import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { stepOfForce } from '../calibrationRows.ts'
import { polynomialFit } from './polynomialFit.ts'
import { fittedValue } from './prediction.ts'

/** So many distinct loads carry a bent curve; fewer a straight line. */
const stepsForBent = 5

/**
 * The curve through the increasing readings so far, for looking at while a calibration runs: N of a reading; null while two
 * distinct loads with distinct readings are missing.
 *
 * A line, from five distinct loads on a parabola. No judgement: that is calibrationOf.
 * Source: polynomialFit. Checked: tests/domain/calibration/fit/runningFit.spec.ts.
 */
export function runningFit(rows: readonly CalibrationRow[]): ((reading: number) => number) | null {
  const up = rows.filter((row) => row.direction === 'up')
  const distinct = Math.min(
    new Set(up.map((row) => stepOfForce(row.forceN))).size,
    new Set(up.map((row) => row.reading)).size,
  )
  if (distinct < 2) return null
  const { centred } = polynomialFit(
    up.map((row) => row.reading),
    up.map((row) => row.forceN),
    distinct < stepsForBent ? 1 : 2,
    false,
  )
  return (reading) => fittedValue(centred, reading)
}
