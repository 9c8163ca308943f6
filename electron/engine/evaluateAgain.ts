import type { Clock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import { Trouble } from '#contract/errors.ts'
import type { EvaluatedAgain } from '#contract/records/calibrationUse.ts'
import { evaluationUnder } from './evaluationUnder.ts'
import { resultInForce } from './scaleInForce.ts'

/** Evaluates a stored break under another calibration; the result stands in force beside the older ones, which stay. */
export async function evaluateAgain(
  archive: Archive,
  clock: Clock,
  breakId: number,
  calibrationId: number,
): Promise<EvaluatedAgain> {
  const record = await archive.break(breakId)
  const { header, end } = record
  const calibration = await archive.calibration(calibrationId)
  const before = resultInForce(record)
  if (end === null || before === null)
    throw new Trouble('conflict', `Break ${breakId} is still being captured.`, 'Wait until it has ended.')
  if (before.scale.kind === 'calibration' && before.scale.calibrationId === calibrationId)
    throw new Trouble(
      'conflict',
      `The result in force of break ${breakId} was made under calibration ${calibrationId} already.`,
      'Choose another calibration.',
    )
  if (calibration.readingUnit !== header.readingUnit)
    throw new Trouble(
      'conflict',
      `Calibration ${calibrationId} is for readings in ${calibration.readingUnit}; those of break ${breakId} are in ${header.readingUnit}.`,
      'Choose a calibration of the amplifier that the break was captured with.',
    )
  const curve = await archive.readCurve(breakId)
  const { verifiedRangeN } = calibration.assessment.result
  const again = evaluationUnder({ header, end, inForce: before, curve }, { calibration, settings: {} }, verifiedRangeN)
  const stored = await archive.addEvaluation({ ...again, besideId: null, madeAt: clock.instant() })
  const peakBeforeN = before.result.peakN
  const peakNowN = stored.result.peakN
  const differenceN = peakBeforeN === null || peakNowN === null ? null : peakNowN - peakBeforeN
  return {
    beforeId: before.evaluationId,
    inForceId: stored.evaluationId,
    peakBeforeN,
    peakNowN,
    differenceN,
    differencePercent: differenceN === null || !peakBeforeN ? null : (100 * differenceN) / peakBeforeN,
  }
}
