// Held by tests/engine/calibration/routine/calibrationDesk.spec.ts.
import type { calibrationProcedures } from '#contract/calibration/procedures.ts'
import { Trouble } from '#contract/errors.ts'
import { leftOut } from '#contract/keeping/unreadable.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import { checkedWeights } from '#domain/calibration/routinePlan.ts'
import type { Bench } from '../bench/bench.ts'
import { benchTaken } from '../bench/benchOccupation.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import { calibrationSummary, driftOf } from './calibrationHistory.ts'
import { calibrationInForce } from './calibrationInForce.ts'
import { checkHistories } from './checkWeight/checkHistory.ts'
import type { CheckWeightRun } from './checkWeight/checkWeightRun.ts'
import type { CalibrationDesk } from './routine/calibrationDesk.ts'
import type { CalibrationRoutine } from './routine/calibrationRoutine.ts'

type CalibrationHandlers = HandlersOf<typeof calibrationProcedures>
type OfGroup<Group extends string> = Pick<CalibrationHandlers, Extract<keyof CalibrationHandlers, `${Group}.${string}`>>

/** Weights, the guided calibration, its records, and the check weight. */
export function calibrationHandlers(
  parts: HandlerParts,
  bench: Pick<Bench, 'state'>,
  desk: CalibrationDesk,
  check: CheckWeightRun,
): CalibrationHandlers {
  return { ...routineHandlers(desk), ...recordHandlers(parts, bench, desk), ...checkHandlers(parts, check) }
}

/** The guided calibration. Every step answers with the state that follows from it. */
function routineHandlers(desk: CalibrationDesk): OfGroup<'calibration'> {
  const step = async (act: (routine: CalibrationRoutine) => void) => {
    act(desk.running())
    return desk.state()
  }
  return {
    'calibration.state': async () => desk.state(),
    'calibration.begin': async ({ plan, by }) => {
      await desk.begin(plan, by)
      return desk.state()
    },
    'calibration.goOn': () => step((routine) => routine.goOn()),
    'calibration.stopWaiting': () => step((routine) => routine.stopWaiting()),
    'calibration.repeat': ({ position }) => step((routine) => routine.repeat(position)),
    'calibration.back': () => step((routine) => routine.back()),
    'calibration.skip': () => step((routine) => routine.skip()),
    'calibration.breakOff': async ({ what, reason }) => {
      if (what === 'run') desk.running().breakOffRun()
      else await desk.breakOff(reason)
      return desk.state()
    },
    'calibration.acceptInverted': ({ accepted }) => step((routine) => routine.acceptInverted(accepted)),
    'calibration.assess': async (choices) => desk.running().assess(choices),
    'calibration.save': (options) => desk.save(options),
  }
}

/** Weights and calibrations as records: listed, compared and put in force. */
function recordHandlers(
  { archive, clock }: HandlerParts,
  bench: Pick<Bench, 'state'>,
  desk: CalibrationDesk,
): OfGroup<'calibrations' | 'weights'> {
  return {
    'weights.list': () => archive.keptWeights(),
    'weights.save': async ({ weights, by }) => {
      checkedWeights(weights)
      return archive.saveWeights(weights, clock.instant(), by)
    },
    'calibrations.list': async () => {
      const inForceId = await archive.calibrationDecided()
      const nowInstant = clock.instant()
      const stored = await archive.calibrations()
      return {
        rows: stored.rows.map((one) => calibrationSummary(one, inForceId, nowInstant)),
        ...leftOut(stored),
      }
    },
    'calibrations.get': async ({ calibrationId }) => {
      const calibration = await archive.calibration(calibrationId)
      const decisions = await archive.calibrationDecisions()
      return {
        calibration,
        inForce: (await archive.calibrationDecided()) === calibrationId,
        decisions: decisions.rows.filter((decision) => decision.calibrationId === calibrationId),
        ...leftOut(decisions),
      }
    },
    'calibrations.history': async () => {
      const stored = await archive.calibrations()
      const decisions = await archive.calibrationDecisions()
      const unfinished = await archive.brokenOffRoutines()
      const running = desk.routineId()
      return {
        drift: driftOf(stored.rows.toReversed()),
        decisions: decisions.rows,
        brokenOff: unfinished.rows.filter(({ routineId }) => routineId !== running),
        // The list of calibrations names those that it leaves out itself.
        ...leftOut(decisions, unfinished),
      }
    },
    'calibrations.putInForce': async ({ calibrationId, by, reason }) => {
      if (bench.state().busyWith !== null)
        throw new Trouble('conflict', benchTaken, 'Finish that first, or stop it early.')
      return archive.addCalibrationDecision({ recordedAt: clock.instant(), by, reason, calibrationId })
    },
  }
}

/** The check before a session, and its charts. */
function checkHandlers({ archive }: HandlerParts, run: CheckWeightRun): OfGroup<'checkWeight'> {
  return {
    'checkWeight.state': async () => run.state(),
    'checkWeight.begin': async ({ weights, gravity, by }) => {
      await run.begin(weights, gravity, by)
      return run.state()
    },
    'checkWeight.goOn': async () => {
      run.goOn()
      return run.state()
    },
    'checkWeight.stop': async () => {
      run.stop()
      return run.state()
    },
    'checkWeight.history': async ({ calibrationId }) => {
      const calibration = await (calibrationId === null
        ? calibrationInForce(archive)
        : archive.calibration(calibrationId))
      if (calibration === null) return { rows: [] }
      const checks = await archive.checkWeights(calibration.calibrationId)
      return { rows: checkHistories(calibration, checks.rows), ...leftOut(checks) }
    },
  }
}
