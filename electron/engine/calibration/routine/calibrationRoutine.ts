import type { AssessmentChoices, RoutineAssessment, RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import type { CalibrationReading } from '#contract/calibration/reading.ts'
import { Trouble, type TroubleMessage } from '#contract/errors.ts'
import { createLoadReading } from '../reading/loadReading.ts'
import { createPositionReading } from './positionReading.ts'
import { routineAssessment } from './routineAssessment.ts'
import { createRoutineFindings } from './routineFindings.ts'
import type { RoutineParts } from './routineParts.ts'
import { routineState } from './routineState.ts'
import { createRoutineSteps } from './routineSteps.ts'

/** A guided calibration from its first preload to the review. Knows nothing of devices and archives. */
export type CalibrationRoutine = {
  /** Every sample of the stream, in the unit of the device. */
  push(timeS: number, reading: number): void
  /** The device went away: the wait ends, what was read stays. */
  lost(problem: TroubleMessage): void
  goOn(): void
  stopWaiting(): void
  repeat(position: number): void
  back(): void
  skip(): void
  breakOffRun(): void
  acceptInverted(accepted: boolean): void
  assess(choices: AssessmentChoices): RoutineAssessment
  readings(): CalibrationReading[]
  preloadsDone(): number
  state(): RoutineState
  /** Ends a wait that is on. */
  stop(): void
}

const conflict = (message: string, hint: string) => new Trouble('conflict', message, hint)

/** Begins with the preloads. */
export function createCalibrationRoutine(parts: RoutineParts): CalibrationRoutine {
  const { plan, forces, changed } = parts
  const steps = createRoutineSteps(plan, forces)
  const loadReading = createLoadReading(parts.clock, changed)
  const findings = createRoutineFindings(steps)
  const positionReading = createPositionReading({ ...parts, steps, loadReading, findings })
  let preloadsDone = 0
  let latest: number | null = null

  const preloading = () => preloadsDone < plan.preloads

  function goOn(): void {
    loadReading.refuseWhileReading()
    findings.tell(null)
    if (preloading()) preloadsDone += 1
    else positionReading.begin()
    changed()
  }

  function stopWaiting(): void {
    // The reading was taken before the hold, so only the creep goes without.
    if (loadReading.stop()) steps.toNextAhead()
    changed()
  }

  function repeat(position: number): void {
    loadReading.refuseWhileReading()
    if (preloading()) throw conflict('The preloads come first.', 'Do them, or skip them.')
    steps.repeat(position)
    findings.tell(null)
    changed()
  }

  return {
    push(timeS, reading) {
      latest = reading
      loadReading.push(timeS, reading)
    },
    lost(problem) {
      stopWaiting()
      findings.tell(problem)
      changed()
    },
    goOn,
    stopWaiting,
    repeat,
    back() {
      const last = (steps.current() ?? steps.positions().length) - 1
      if (preloading() || last < 0) throw conflict('There is no step to go back to.', 'Go on with the step at hand.')
      repeat(last)
    },
    skip() {
      loadReading.refuseWhileReading()
      findings.tell(null)
      if (preloading()) preloadsDone = plan.preloads
      else steps.skip()
      changed()
    },
    breakOffRun() {
      loadReading.stop()
      findings.tell(null)
      const { run } = steps.at(steps.current() ?? steps.positions().length - 1)
      positionReading.forget(run)
      steps.breakOff(run)
      findings.fitAgain()
      changed()
    },
    acceptInverted(accepted) {
      findings.acceptInverted(accepted)
      changed()
    },
    assess(choices) {
      const invertedAccepted = choices.invertedAccepted || findings.invertedAccepted()
      const soFar = { rows: steps.rows(), held: positionReading.held(), plan, forces }
      return routineAssessment(soFar, { ...choices, invertedAccepted })
    },
    readings: steps.readings,
    preloadsDone: () => preloadsDone,
    state() {
      const readingUnit = parts.readingUnit()
      return routineState({ plan, forces, steps, loadReading, findings, preloadsDone, readingUnit, latest })
    },
    stop: loadReading.stop,
  }
}
