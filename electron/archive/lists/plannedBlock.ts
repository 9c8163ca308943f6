// Held by tests/archive/findings/observations.spec.ts.
import type { BrokenBlock } from '#domain/programme/calendar/pullOfBreak.ts'

/** The newest correction of the glue-up `u`, in SQL; NULL where nothing of it was corrected. */
const corrected = `(SELECT c.fields FROM glue_up_correction c WHERE c.glue_up_id = u.glue_up_id
    ORDER BY c.glue_up_correction_id DESC LIMIT 1)`

/** Every glue-up with its `fields` as they stand in force, as a table in SQL. */
export const glueUpsInForce = `(SELECT u.glue_up_id, u.study_id, coalesce(${corrected}, u.fields) AS fields FROM glue_up u)`

/** What a study says of a specimen that is a block of it; null where it is of none, or its glue-up has no day. */
export type PlannedColumns = {
  studyId: number | null
  gluedInStudyOn: string | null
  plannedAgeMonths: number | null
}

export const plannedColumns = `p.study_id AS studyId, json_extract(u.fields, '$.gluedOn') AS gluedInStudyOn, p.age_months AS plannedAgeMonths`

/** Blocks of studies are glued blocks `g` with their plan `p` and their glue-up `u`; `s` is the specimen. */
export const plannedJoins = `LEFT JOIN glued_block g ON g.specimen_id = s.specimen_id LEFT JOIN block p ON p.block_id = g.block_id
     LEFT JOIN ${glueUpsInForce} u ON u.glue_up_id = g.glue_up_id`

/** A row without the day and age that its study says of it, but with the age of the pull in which it was broken; null: in none. */
export function inItsPull<Row extends PlannedColumns & { gluedOn: string | null; startedAt: string }>(
  row: Row,
  pullOf: (block: BrokenBlock) => number | null,
): Omit<Row, 'gluedInStudyOn' | 'plannedAgeMonths'> & { pullAgeMonths: number | null } {
  const { gluedInStudyOn, plannedAgeMonths, ...rest } = row
  const { studyId } = row
  const isPlanned = studyId !== null && gluedInStudyOn !== null && rest.gluedOn !== null
  return {
    ...rest,
    pullAgeMonths: isPlanned
      ? pullOf({ studyId, gluedOn: gluedInStudyOn, ageMonths: plannedAgeMonths, brokenOn: row.startedAt })
      : null,
  }
}
