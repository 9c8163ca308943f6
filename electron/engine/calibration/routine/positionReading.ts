// Held by tests/engine/calibration/routine/calibrationRoutine.spec.ts.
import { Trouble, troubleFrom } from '#contract/errors.ts'
import type { HeldLoad } from '#domain/calibration/steps/creep.ts'
import type { LoadReading, LoadReadingListener } from '../reading/loadReading.ts'
import type { RoutineFindings } from './routineFindings.ts'
import type { RoutineParts } from './routineParts.ts'
import type { RoutineSteps } from './routineSteps.ts'

/** Reads the position at hand; the highest load of the last run is held for its creep, if the plan says so. */
export type PositionReading = {
  /** Throws Trouble `conflict` when every position has been read, or what `checkDevice` throws. */
  begin(): void
  /** null: no load was held, so creep is not known. */
  held(): HeldLoad | null
  /** What was held in that run counts no more. */
  forget(run: number): void
}

export type PositionReadingParts = Pick<RoutineParts, 'clock' | 'plan' | 'readingUnit' | 'checkDevice' | 'keep'> & {
  steps: RoutineSteps
  loadReading: LoadReading
  findings: RoutineFindings
}

/** Nothing was held yet. */
export function createPositionReading(parts: PositionReadingParts): PositionReading {
  const { plan, steps, loadReading, findings } = parts
  const heldPosition = plan.creepHoldS === null ? -1 : steps.lastHighest
  let held: HeldLoad | null = null

  function listenerOf(index: number): LoadReadingListener {
    const { run, forceN } = steps.at(index)
    return {
      read(averaged) {
        const { number, taken } = steps.take(index, averaged, parts.clock.instant())
        parts.keep(number, taken)
        if (forceN === 0) findings.zeroWasRead(averaged, parts.readingUnit())
        findings.judge(index)
      },
      held(found) {
        held = found === null ? null : { run, loadN: forceN, ...found }
        if (found === null) findings.tell(creepWasMissed)
      },
      over: steps.toNextAhead,
      failed: (trouble) => findings.tell(troubleFrom(trouble)),
    }
  }

  return {
    begin() {
      const index = steps.current()
      if (index === null)
        throw new Trouble('conflict', 'Every step has been read.', 'Look at the result and save it, or repeat a step.')
      parts.checkDevice()
      const isHeld = index === heldPosition
      if (isHeld) held = null
      loadReading.begin({ ...plan, holdS: isHeld ? plan.creepHoldS : null }, listenerOf(index))
    },
    held: () => held,
    forget(run) {
      if (held?.run === run) held = null
    },
  }
}

const creepWasMissed = troubleFrom(
  new Trouble(
    'not-connected',
    'The signal was away while the load was held, so creep was not measured.',
    'Go on; the reading of the step is kept. Repeat the step to measure creep after all.',
  ),
)
