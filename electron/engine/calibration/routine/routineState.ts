// Held by tests/engine/calibration/routine/calibrationDesk.spec.ts.
import type { CalibrationPlan, PlannedForces } from '#contract/calibration/calibrationPlan.ts'
import type { RoutinePhase, RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { type LoadReading, quietReading } from '../reading/loadReading.ts'
import type { RoutineFindings } from './routineFindings.ts'
import type { RoutineSteps } from './routineSteps.ts'

/** The parts of a routine that have something to show. */
export type ShownRoutine = {
  plan: CalibrationPlan
  forces: PlannedForces
  steps: RoutineSteps
  loadReading: LoadReading
  findings: RoutineFindings
  preloadsDone: number
  readingUnit: ReadingUnit | null
  /** The newest reading of the stream. */
  latest: number | null
}

/** What the routine shows, at one moment. */
export function routineState(shown: ShownRoutine): RoutineState {
  const { plan, steps, findings, preloadsDone } = shown
  const fit = findings.fit()
  return {
    phase: phaseOf(shown),
    plan,
    gMPerS2: shown.forces.gMPerS2,
    readingUnit: shown.readingUnit,
    preloadsDone,
    positions: steps.positions(),
    current: positionAtHand(shown),
    readings: steps.readings().map((reading) => ({
      ...reading,
      residualN: fit === null ? null : fit(reading.mean) - reading.forceN,
    })),
    live: liveOf(shown),
    problem: findings.problem(),
    reversed: findings.reversed(),
    invertedAccepted: findings.invertedAccepted(),
    suggestedResolution: findings.suggestedResolution(),
  }
}

const positionAtHand = ({ preloadsDone, plan, steps }: ShownRoutine) =>
  preloadsDone < plan.preloads ? null : steps.current()

function phaseOf({ plan, preloadsDone, steps, loadReading }: ShownRoutine): RoutinePhase {
  if (preloadsDone < plan.preloads) return 'preloading'
  const reading = loadReading.phase()
  if (reading !== null) return reading
  const current = steps.current()
  if (current === null) return 'review'
  return steps.at(current).forceN === 0 ? 'zero' : 'step'
}

function liveOf(shown: ShownRoutine): RoutineState['live'] {
  const { steps, findings, latest } = shown
  const live = shown.loadReading.live()
  const fit = findings.fit()
  const at = positionAtHand(shown)
  const mean = live.mean ?? latest
  return {
    ...live,
    latest,
    residualN: fit === null || at === null || mean === null ? null : fit(mean) - steps.at(at).forceN,
  }
}

/** What is shown while no routine runs. */
export const noRoutine: RoutineState = {
  phase: 'planning',
  plan: null,
  gMPerS2: null,
  readingUnit: null,
  preloadsDone: 0,
  positions: [],
  current: null,
  readings: [],
  live: { ...quietReading, latest: null, residualN: null },
  problem: null,
  reversed: false,
  invertedAccepted: false,
  suggestedResolution: null,
}
