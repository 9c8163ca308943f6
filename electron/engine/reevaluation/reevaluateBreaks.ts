import type { ArchiveReader } from '#archive/archiveReader.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import { Trouble, type TroubleCode } from '#contract/errors.ts'
import type { Reevaluation } from '#contract/reevaluation/reevaluation.ts'
import { stillCaptured } from '#domain/strength/breakTroubles.ts'
import { overrulable } from '#domain/strength/overruling.ts'
import { evaluationUnder, type StoredBreak, type UndatedEvaluation } from './evaluationUnder.ts'

/** One break evaluated once more, or why it could not be. */
export type Reevaluated =
  | { breakId: number; evaluation: UndatedEvaluation }
  | { breakId: number; evaluation: null; message: string }

export type ReevaluationOrder = Pick<Reevaluation, 'breakIds' | 'calibrationId' | 'settings'>

/** What of an archive is read to evaluate a break once more. */
export type CurvesReader = Pick<ArchiveReader, 'atOneMoment' | 'break' | 'readCurve' | 'calibration'>

/** Reads breaks from an archive and evaluates them, one after the other, as they are asked for. Writes nothing. */
export function* reevaluateBreaks(archive: CurvesReader, order: ReevaluationOrder): Generator<Reevaluated> {
  const wanted = order.calibrationId === null ? null : archive.calibration(order.calibrationId)
  for (const breakId of order.breakIds) {
    try {
      const stored = storedBreak(archive, breakId)
      if (wanted !== null) refuseOtherUnit(stored, wanted)
      const { scale } = stored.inForce
      const under = wanted ?? (scale.kind === 'calibration' ? archive.calibration(scale.calibrationId) : null)
      const verifiedRangeN = under?.assessment.result.verifiedRangeN ?? null
      const evaluation = evaluationUnder(stored, { calibration: wanted, settings: order.settings }, verifiedRangeN)
      yield { breakId, evaluation }
    } catch (thrown) {
      yield { breakId, evaluation: null, message: whyNot(thrown) }
    }
  }
}

/** A damaged curve or page, or a scale that cannot be followed, keeps no other break from its result; all else is thrown on. */
function whyNot(thrown: unknown): string {
  const isOfBreak =
    thrown instanceof RangeError || (thrown instanceof Trouble && ofBreak.some((code) => code === thrown.code))
  if (!isOfBreak) throw thrown
  return thrown.message
}

/** Troubles that one break may have. */
const ofBreak: readonly TroubleCode[] = ['conflict', 'not-found', 'invalid-input', 'archive-damaged', 'unsupported']

/** All that is needed of a break, at one moment of the archive. Throws Trouble `conflict` where there is no result to stand beside. */
function storedBreak(archive: CurvesReader, breakId: number): StoredBreak {
  return archive.atOneMoment(() => {
    const record = archive.break(breakId)
    const { header, end } = record
    if (end === null) throw stillCaptured(breakId, 'Evaluate it again when it has ended.')
    return { header, end, inForce: overrulable(record), curve: archive.readCurve(breakId) }
  })
}

function refuseOtherUnit({ header }: StoredBreak, { calibrationId, readingUnit }: Calibration): void {
  if (readingUnit === header.readingUnit) return
  throw new Trouble(
    'conflict',
    `Calibration ${calibrationId} is for readings in ${readingUnit}; those of break ${header.breakId} are in ${header.readingUnit}.`,
    'Choose a calibration of the amplifier that the break was recorded with.',
  )
}
