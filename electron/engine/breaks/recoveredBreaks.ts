// Held by tests/engine/createEngine.spec.ts.
import type { Clock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import { evaluateRawCurve } from '#domain/signal/loading/evaluateRawCurve.ts'
import { storedEvaluation } from '#domain/signal/loading/storedEvaluation.ts'

/**
 * Evaluates what a crash left behind, so that it can be seen and judged like any other break. One that cannot be evaluated now
 * is told and hinders no other; it is tried again when the archive is opened the next time.
 */
export async function evaluateRecovered(
  archive: Archive,
  clock: Clock,
  tell: (trouble: TroubleMessage) => void,
): Promise<void> {
  for (const breakId of await archive.recoveredWithoutEvaluation())
    try {
      await evaluateOne(archive, clock, breakId)
    } catch (thrown) {
      const { code, message, hint } = troubleFrom(thrown)
      tell({ code, message: `Break ${breakId}, which was cut short, cannot be evaluated: ${message}`, hint })
    }
}

async function evaluateOne(archive: Archive, clock: Clock, breakId: number): Promise<void> {
  const { header } = await archive.break(breakId)
  const result = evaluateRawCurve(await archive.readCurve(breakId), header)
  const { scale } = header
  const verifiedRangeN =
    scale.kind === 'calibration'
      ? (await archive.calibration(scale.calibrationId)).assessment.result.verifiedRangeN
      : null
  await archive.addEvaluation({
    breakId,
    ...storedEvaluation(header, result, 'recovered', clock.instant(), verifiedRangeN),
  })
}
