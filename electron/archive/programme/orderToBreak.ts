// Held by tests/archive/programme/breakingSessions.spec.ts.
import type { PullName } from '#contract/programme/pull.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { shuffled } from '#domain/numbers/shuffled.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { waitsForPress } from '../lists/waits.ts'

/** Glued blocks `p` with their glue-ups `g` and specimens `s`, in SQL. */
export const gluedBlocks = `block p
  JOIN glued_block b ON b.block_id = p.block_id
  JOIN glue_up g ON g.glue_up_id = b.glue_up_id
  JOIN specimen_current s ON s.specimen_id = b.specimen_id`

/** The day of a glue-up `g`, in SQL. */
export const gluedOnOf = "json_extract(g.fields, '$.gluedOn')"

/**
 * The specimens of a session in the order in which they are to be broken: what waits of its pulls, each pull in the random order
 * that was drawn with its study, then the specimens named besides, blocks of a study in theirs and all others in an order drawn
 * from the seed.
 */
export function orderToBreak(
  database: Database,
  { pulls, specimenIds }: { pulls: readonly PullName[]; specimenIds: readonly number[] },
  seed: number,
): number[] {
  const ofPulls = pulls.flatMap((pull) => specimensOfPull(database, pull))
  const ofStudies = prepared<{ specimen_id: number }>(
    database,
    `SELECT b.specimen_id FROM glued_block b JOIN block p ON p.block_id = b.block_id
     WHERE b.specimen_id IN (SELECT value FROM json_each(?)) ORDER BY p.study_id, p.breaking_order, p.block_id`,
  )
    .all(JSON.stringify(specimenIds))
    .map((row) => row.specimen_id)
  const drawn = new Set(ofStudies)
  const others = shuffled(
    [...new Set(specimenIds)].filter((specimenId) => !drawn.has(specimenId)),
    createRandom(seed),
  )
  return [...new Set([...ofPulls, ...ofStudies, ...others])]
}

function specimensOfPull(database: Database, { studyId, gluedOn, ageMonths }: PullName): number[] {
  return prepared<{ specimen_id: number }>(
    database,
    `SELECT b.specimen_id FROM ${gluedBlocks}
     WHERE p.study_id = ? AND p.age_months = ? AND (? IS NULL OR ${gluedOnOf} = ?) AND ${waitsForPress('s')}
     ORDER BY p.breaking_order, p.block_id`,
  )
    .all(studyId, ageMonths, gluedOn, gluedOn)
    .map((row) => row.specimen_id)
}
