import type { CalibrationReading } from '#contract/calibration/reading.ts'
import { Trouble } from '#contract/errors.ts'
import { agreeToInvert, keptSoFar, wiredInReverse } from '../calibrationRows.ts'

/** A reading at its place in the routine. */
export type PlacedReading = Pick<CalibrationReading, 'run' | 'direction' | 'forceN' | 'mean' | 'sd' | 'count'> & {
  readonly index: number
}

export type Movement = {
  /** The reading falls while the force rises, and nobody has agreed to that. */
  readonly reversed: boolean
  /** What is wrong with the newest reading; null: nothing. */
  readonly problem: Trouble | null
}

/** A change of less than so many standard errors of the two means is none. */
const standardErrors = 5

/**
 * Whether the newest reading (at place `newest`) follows the load: it must move, and the same way as all others.
 *
 *   moved: |r₂ − r₁| > 5 sqrt( s₁²/n₁ + s₂²/n₂ )      r mean, s SD, n count of the two neighbouring readings of a run
 *
 * Source: common practice, no source. Checked: tests/domain/calibration/steps/movement.spec.ts.
 */
export function movementOf(readings: readonly PlacedReading[], newest: number, invertedAccepted: boolean): Movement {
  const pairs = readings.flatMap((reading, index) => {
    const before = readings[index - 1]
    if (before === undefined || before.run !== reading.run || before.forceN === reading.forceN) return []
    const change = reading.mean - before.mean
    const noise = Math.sqrt(before.sd ** 2 / before.count + reading.sd ** 2 / reading.count)
    const moved = Math.abs(change) > standardErrors * noise
    return [{ before, reading, moved, way: moved ? Math.sign(change) * Math.sign(reading.forceN - before.forceN) : 0 }]
  })
  const sum = pairs.reduce((total, pair) => total + pair.way, 0)
  if (sum < 0 && !invertedAccepted)
    return {
      reversed: true,
      problem: new Trouble(
        'invalid-input',
        wiredInReverse,
        `${agreeToInvert}, or swap the two signal wires and begin again. ${keptSoFar}`,
      ),
    }
  const stray = pairs.find(
    ({ before, reading, way }) => (before.index === newest || reading.index === newest) && way !== (sum < 0 ? -1 : 1),
  )
  if (stray === undefined) return { reversed: false, problem: null }
  const { before, reading, moved } = stray
  return {
    reversed: false,
    problem: moved
      ? new Trouble(
          'invalid-input',
          `From one load to the next the reading moved the wrong way, from ${before.mean.toFixed(1)} to ${reading.mean.toFixed(1)}.`,
          `Look whether something touches or has shifted, and repeat the step. ${keptSoFar}`,
        )
      : new Trouble(
          'invalid-input',
          `From one load to the next the reading did not move, it stayed at ${before.mean.toFixed(1)}.`,
          `Look whether the weights of this step hang on the cell, and repeat the step. ${keptSoFar}`,
        ),
  }
}
