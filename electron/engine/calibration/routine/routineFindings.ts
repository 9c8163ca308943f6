// Held by tests/engine/calibration/routine/calibrationRoutine.spec.ts.
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import { runningFit } from '#domain/calibration/fit/runningFit.ts'
import { movementOf } from '#domain/calibration/steps/movement.ts'
import type { AveragedReading } from '../reading/steadyReading.ts'
import type { RoutineSteps } from './routineSteps.ts'

/** What the readings so far tell of cable, weights and fit. */
export type RoutineFindings = {
  /** Looks at the newest reading, at the position of that index. */
  judge(index: number): void
  /** Readings were taken out of the count. */
  fitAgain(): void
  /** The person agrees, or no longer, that the reading falls while the force rises. */
  acceptInverted(accepted: boolean): void
  /** The first zero says how finely the readings can be told apart. */
  zeroWasRead(averaged: AveragedReading, unit: ReadingUnit | null): void
  tell(problem: TroubleMessage | null): void
  problem(): TroubleMessage | null
  reversed(): boolean
  invertedAccepted(): boolean
  suggestedResolution(): number | null
  /** Force of a reading by the fit so far, N; null: too few readings for one. */
  fit(): ((reading: number) => number) | null
}

/** Nothing is known yet. */
export function createRoutineFindings(steps: RoutineSteps): RoutineFindings {
  let problem: TroubleMessage | null = null
  let reversed = false
  let invertedAccepted = false
  let suggestedResolution: number | null = null
  let fit: ((reading: number) => number) | null = null

  function judge(index: number): void {
    fit = runningFit(steps.rows())
    const movement = movementOf(steps.placed(), index, invertedAccepted)
    reversed = movement.reversed
    problem = movement.problem === null ? null : troubleFrom(movement.problem)
  }

  return {
    judge,
    fitAgain() {
      fit = runningFit(steps.rows())
    },
    acceptInverted(accepted) {
      invertedAccepted = accepted
      const newest = steps.newest()
      if (newest >= 0) judge(newest)
    },
    zeroWasRead({ lowest, highest }, unit) {
      if (suggestedResolution !== null) return
      const half = (highest - lowest) / 2
      suggestedResolution = unit === 'counts' ? Math.max(1, half) : half > 0 ? half : null
    },
    tell(next) {
      problem = next
    },
    problem: () => problem,
    reversed: () => reversed,
    invertedAccepted: () => invertedAccepted,
    suggestedResolution: () => suggestedResolution,
    fit: () => fit,
  }
}
