import { Trouble } from '#contract/errors.ts'
import type { Handlers } from '#contract/procedures.ts'
import { checkedWeights } from '#domain/calibration/routinePlan.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import { calibrationSummary, driftOf } from './calibrationHistory.ts'
import type { CalibrationDesk } from './routine/calibrationDesk.ts'

type Names = Extract<keyof Handlers, `calibrations.${string}` | `weights.${string}`>

/** Weights and calibrations as records: listed, compared and put in force. */
export function calibrationRecordHandlers(parts: HandlerParts, desk: CalibrationDesk): Pick<Handlers, Names> {
  const { archive, clock, emit } = parts
  return {
    'weights.list': () => archive.keptWeights(),
    'weights.save': async ({ weights, by }) => {
      checkedWeights(weights)
      return archive.saveWeights(weights, clock.instant(), by)
    },
    'calibrations.list': async () => {
      const inForceId = parts.inForce()?.calibrationId ?? null
      const nowInstant = clock.instant()
      return (await archive.calibrations()).map((one) => calibrationSummary(one, inForceId, nowInstant))
    },
    'calibrations.get': async ({ calibrationId }) => {
      const calibration = await archive.calibration(calibrationId)
      const decisions = await archive.calibrationDecisions()
      return {
        calibration,
        inForce: parts.inForce()?.calibrationId === calibrationId,
        decisions: decisions.filter((decision) => decision.calibrationId === calibrationId),
      }
    },
    'calibrations.history': async () => {
      const running = desk.routineId()
      return {
        drift: driftOf((await archive.calibrations()).toReversed()),
        decisions: await archive.calibrationDecisions(),
        brokenOff: (await archive.brokenOffRoutines()).filter(({ routineId }) => routineId !== running),
      }
    },
    'calibrations.putInForce': async ({ calibrationId, by, reason }) => {
      if (parts.bench.state().busyWith !== null)
        throw new Trouble(
          'conflict',
          'The bench is being calibrated or checked.',
          'Finish that first, or break it off.',
        )
      const decision = await archive.addCalibrationDecision({ recordedAt: clock.instant(), by, reason, calibrationId })
      await parts.calibrationChanged()
      emit('calibrations.changed', { calibrationIds: calibrationId === null ? [] : [calibrationId] })
      return decision
    },
  }
}
