import { readEnd, readHeader } from '#archive/breaks/breakHeaders.ts'
import { readCurve } from '#archive/breaks/breaks.ts'
import { readEvaluation } from '#archive/breaks/evaluations.ts'
import { calibration } from '#archive/calibration/calibrations.ts'
import { databaseTrouble } from '#archive/core/databaseTrouble.ts'
import type { OpenArchive } from '#archive/core/openDatabase.ts'
import { evaluationInForce } from '#archive/lists/inForce.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import { Trouble, type TroubleCode } from '#contract/errors.ts'
import type { Reevaluation } from '#contract/reevaluation/reevaluation.ts'
import { noResultYet, stillCaptured } from '#domain/strength/breakTroubles.ts'
import { evaluationUnder, type StoredBreak, type UndatedEvaluation } from './evaluationUnder.ts'

/** One break evaluated once more, or why it could not be. */
export type Reevaluated =
  | { breakId: number; evaluation: UndatedEvaluation }
  | { breakId: number; evaluation: null; message: string }

export type ReevaluationOrder = Pick<Reevaluation, 'breakIds' | 'calibrationId' | 'settings'>

/** Reads breaks from an archive and evaluates them, one after the other, as they are asked for. Writes nothing. */
export function* reevaluateBreaks(
  { database }: Pick<OpenArchive, 'database'>,
  order: ReevaluationOrder,
): Generator<Reevaluated> {
  const wanted = order.calibrationId === null ? null : calibration(database, order.calibrationId)
  for (const breakId of order.breakIds) {
    try {
      const stored = storedBreak(database, breakId)
      if (wanted !== null) refuseOtherUnit(stored, wanted)
      const { scale } = stored.inForce
      const under = wanted ?? (scale.kind === 'calibration' ? calibration(database, scale.calibrationId) : null)
      const verifiedRangeN = under?.assessment.result.verifiedRangeN ?? null
      const evaluation = evaluationUnder(stored, { calibration: wanted, settings: order.settings }, verifiedRangeN)
      yield { breakId, evaluation }
    } catch (thrown) {
      yield { breakId, evaluation: null, message: whyNot(databaseTrouble(thrown, database.name)) }
    }
  }
}

/** A damaged curve or page, or a scale that cannot be followed, keeps no other break from its result; all else is thrown on. */
function whyNot(known: unknown): string {
  const isOfBreak =
    known instanceof RangeError || (known instanceof Trouble && ofBreak.some((code) => code === known.code))
  if (!isOfBreak) throw known
  return known.message
}

/** Troubles that one break may have. */
const ofBreak: readonly TroubleCode[] = ['conflict', 'not-found', 'invalid-input', 'archive-damaged', 'unsupported']

/** All that is needed of a break, at one moment of the archive. */
function storedBreak(database: OpenArchive['database'], breakId: number): StoredBreak {
  return database.transaction(() => {
    const header = readHeader(database, breakId)
    const end = readEnd(database, breakId)
    if (end === null) throw stillCaptured(breakId, 'Evaluate it again when it has ended.')
    const inForceId = evaluationInForce(database, breakId)
    if (inForceId === null) throw noResultYet(breakId)
    return { header, end, inForce: readEvaluation(database, inForceId), curve: readCurve(database, breakId) }
  })()
}

function refuseOtherUnit({ header }: StoredBreak, { calibrationId, readingUnit }: Calibration): void {
  if (readingUnit === header.readingUnit) return
  throw new Trouble(
    'conflict',
    `Calibration ${calibrationId} is for readings in ${readingUnit}; those of break ${header.breakId} are in ${header.readingUnit}.`,
    'Choose a calibration of the amplifier that the break was captured with.',
  )
}
