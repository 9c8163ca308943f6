// Held by tests/engine/calibration/routine/calibrationRoutine.spec.ts.
import { Trouble, troubleFrom } from '#contract/errors.ts'
import type { HeldLoad } from '#domain/calibration/steps/creep.ts'
import { loadedZero, looksLoaded } from '#domain/calibration/steps/loadedZero.ts'
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

export type PositionReadingParts = Pick<
  RoutineParts,
  'clock' | 'plan' | 'readingUnit' | 'taredN' | 'checkDevice' | 'keep'
> & {
  steps: RoutineSteps
  loadReading: LoadReading
  findings: RoutineFindings
}

/** Nothing was held yet. */
export function createPositionReading(parts: PositionReadingParts): PositionReading {
  const { plan, steps, loadReading, findings } = parts
  const heldPosition = plan.creepHoldS === null ? -1 : steps.lastHighest
  const lightestN = Math.min(...steps.positions().flatMap(({ forceN }) => (forceN > 0 ? [forceN] : [])))
  let held: HeldLoad | null = null

  /** Asks whether a weight was left on at a zero, where the readings before it say so. */
  function doubtZero(seenN: number | null): void {
    if (findings.problem() === null && looksLoaded(seenN, lightestN)) findings.tell(troubleFrom(loadedZero(repeatIfSo)))
  }

  function listenerOf(index: number): LoadReadingListener {
    const { run, forceN } = steps.at(index)
    return {
      read(averaged) {
        const seenN = findings.fit()?.(averaged.mean) ?? parts.taredN(averaged.mean)
        const { number, taken } = steps.take(index, averaged, parts.clock.instant())
        parts.keep(number, taken)
        if (forceN === 0) findings.zeroWasRead(averaged, parts.readingUnit())
        findings.judge(index)
        if (forceN === 0) doubtZero(seenN)
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

const repeatIfSo =
  'If so, take it off and repeat this step. If not, as where a hook was added, go on: the reading is kept.'

const creepWasMissed = troubleFrom(
  new Trouble(
    'not-connected',
    'The signal was away while the load was held, so creep was not measured.',
    'Go on; the reading of the step is kept. Repeat the step to measure creep after all.',
  ),
)
