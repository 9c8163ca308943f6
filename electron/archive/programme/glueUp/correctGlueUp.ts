import type { GlueUpCorrection, GlueUpFields } from '#contract/programme/glueUp.ts'
import type { Specimen, SpecimenFields } from '#contract/specimens/specimen.ts'
import { localDayOf } from '#domain/programme/calendar/calendarDay.ts'
import { canonicalJson } from '#domain/text/canonicalJson.ts'
import { nameNew } from '../../catalogue/newNames.ts'
import { writtenOfGlueUp } from '../../catalogue/written.ts'
import type { Database } from '../../core/database.ts'
import { prepared } from '../../core/prepared.ts'
import { storeRecord } from '../../core/recordKind.ts'
import { conflict } from '../../core/recordTrouble.ts'
import { touch } from '../../core/touched.ts'
import { inTransaction } from '../../core/transaction.ts'
import { glueUpCorrectionKind } from '../sessionKinds.ts'
import { glueUpRow } from './glueUpLists.ts'

/** How the archive lays revisions over specimens. */
export type ReviseSpecimens = (
  database: Database,
  specimenIds: readonly number[],
  change: (fields: SpecimenFields) => SpecimenFields,
  made: Pick<Specimen, 'recordedAt' | 'by' | 'reason'>,
) => void

export type NewGlueUpCorrection = Omit<GlueUpCorrection, 'glueUpCorrectionId'>

/**
 * Lays a correction over what was entered of a glue-up. Its specimens follow in day and lot where they had those of the glue-up; one
 * that was given its own keeps it. Throws the trouble "not-found" when there is no such glue-up, "conflict" for what changes nothing
 * and for a day after that on which a block of it was broken.
 */
export function correctGlueUp(database: Database, made: NewGlueUpCorrection, reviseSpecimens: ReviseSpecimens): void {
  inTransaction(database, () => {
    const { glueUpId, fields, recordedAt, by, reason } = made
    const before = glueUpRow(database, glueUpId)
    if (canonicalJson(before.fields) === canonicalJson(fields))
      throw conflict('Nothing of the glue-up is another now.', 'Change what was wrong, or leave it as it is.')
    refuseDayAfterBreak(database, glueUpId, fields.gluedOn)
    nameNew(database, [...writtenOfGlueUp(fields), { kind: 'operator', name: by, of: '' }], recordedAt, by)
    storeRecord(database, glueUpCorrectionKind, made)
    reviseSpecimens(database, specimensOf(database, glueUpId), following(before.fields, fields), {
      recordedAt,
      by,
      reason,
    })
    if (before.studyId !== null) touch(database, `study ${before.studyId}`, 'results')
  })
}

function specimensOf(database: Database, glueUpId: number): number[] {
  return prepared<{ specimen_id: number }>(
    database,
    'SELECT specimen_id FROM glued_block WHERE glue_up_id = ? ORDER BY specimen_id',
  )
    .all(glueUpId)
    .map((row) => row.specimen_id)
}

/** Every break of its blocks counts, also one that was set aside: none is broken before it is glued. */
function refuseDayAfterBreak(database: Database, glueUpId: number, gluedOn: string): void {
  const broken = prepared<{ number: string; at: string }>(
    database,
    `SELECT r.number, x.at FROM glued_block g JOIN specimen_current s ON s.specimen_id = g.specimen_id
     JOIN specimen_revision r ON r.revision_id = s.revision_id
     JOIN (SELECT specimen_id, started_at AS at FROM break_current WHERE outcome = 'break'
       UNION ALL SELECT specimen_id, broken_on FROM typed_result WHERE broken_on IS NOT NULL) x
       ON x.specimen_id = s.specimen_id
     WHERE g.glue_up_id = ?`,
  ).all(glueUpId)
  // A break has an instant, a result that was typed in a day
  const before = broken.find(({ at }) => (at.includes('T') ? localDayOf(at) : at) < gluedOn)
  if (before !== undefined)
    throw conflict(
      `Block ${before.number} was broken before that day.`,
      'Give the day on which the blocks were glued: none is broken before it.',
    )
}

/** What becomes of a specimen that had day and lot of the glue-up as it was; the name of its adhesive may have been corrected since. */
function following(was: GlueUpFields, is: GlueUpFields): (fields: SpecimenFields) => SpecimenFields {
  const lotIn = ({ lots }: GlueUpFields, adhesive: string) => lots.find((one) => one.adhesive === adhesive)?.lot ?? ''
  return (fields) => {
    const adhesive = was.lots.some((one) => one.adhesive === fields.adhesive)
      ? fields.adhesive
      : (was.lots.find(({ lot }) => lot !== '' && lot === fields.lot)?.adhesive ?? fields.adhesive)
    const gluedOn = fields.gluedOn === was.gluedOn ? is.gluedOn : fields.gluedOn
    const lot = fields.lot === lotIn(was, adhesive) ? lotIn(is, adhesive) : fields.lot
    return gluedOn === fields.gluedOn && lot === fields.lot ? fields : { ...fields, gluedOn, lot }
  }
}
