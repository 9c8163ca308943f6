import type { Handlers } from '#contract/procedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import { checkHistories } from './checkWeight/checkHistory.ts'
import type { CheckWeightRun } from './checkWeight/checkWeightRun.ts'

type Names = Extract<keyof Handlers, `checkWeight.${string}`>

/** The check before a session, and its charts. */
export function checkWeightHandlers(parts: HandlerParts, run: CheckWeightRun): Pick<Handlers, Names> {
  const { archive } = parts
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
      const calibration = calibrationId === null ? parts.inForce() : await archive.calibration(calibrationId)
      if (calibration === null) return []
      return checkHistories(calibration, await archive.checkWeights(calibration.calibrationId))
    },
  }
}
