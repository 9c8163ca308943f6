// Held by tests/shells/commands/captureCommand.spec.ts.
import type { Clock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import { evaluateRawCurve } from '#domain/signal/loading/evaluateRawCurve.ts'
import { storedEvaluation } from '#domain/signal/loading/storedEvaluation.ts'

/** Evaluates what a crash left behind, so that it can be seen and judged like any other break; returns the breaks. */
export async function evaluateRecovered(archive: Archive, clock: Clock): Promise<number[]> {
  const breakIds = await archive.recoveredWithoutEvaluation()
  for (const breakId of breakIds) {
    const { header } = await archive.break(breakId)
    const result = evaluateRawCurve(await archive.readCurve(breakId), header)
    const { scale } = header
    const verifiedRangeN =
      scale.kind === 'calibration'
        ? (await archive.calibration(scale.calibrationId)).assessment.result.verifiedRangeN
        : null
    const evaluation = storedEvaluation(header, result, 'recovered', clock.instant(), verifiedRangeN)
    await archive.addEvaluation({ breakId, ...evaluation })
  }
  return breakIds
}
