// Held by tests/archive/programme/breakingSessions.spec.ts.
import type { PullName } from '#contract/programme/pull.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { shuffled } from '#domain/numbers/shuffled.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { glueUpsInForce } from '../lists/plannedBlock.ts'
import { waitsForPress } from '../lists/waits.ts'
import { decisionsOnPulls } from './decisionsOnPulls.ts'

/** Glued blocks `p` with their glue-ups `g` and specimens `s`, in SQL. */
export const gluedBlocks = `block p
  JOIN glued_block b ON b.block_id = p.block_id
  JOIN ${glueUpsInForce} g ON g.glue_up_id = b.glue_up_id
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

/**
 * What waits of a pull, in the order in which it is to be broken; of one that was added, the spares that it takes, less those that
 * were broken in a session of it before.
 */
export function specimensOfPull(database: Database, { studyId, gluedOn, ageMonths }: PullName): number[] {
  const ofStudy = `FROM ${gluedBlocks} WHERE p.study_id = @studyId AND (@gluedOn IS NULL OR ${gluedOnOf} = @gluedOn)`
  const order = 'p.breaking_order, p.block_id'
  const waits = waitsForPress('s')
  const planned = prepared<Found>(
    database,
    `SELECT b.specimen_id ${ofStudy} AND p.age_months = @ageMonths AND ${waits} ORDER BY ${order}`,
  ).all({ studyId, gluedOn, ageMonths })
  if (planned.length > 0 || isPlanned(database, studyId, ageMonths)) return planned.map((row) => row.specimen_id)
  // A pull that the plan did not have takes spares of each series
  return prepared<Found>(
    database,
    `SELECT specimen_id FROM (SELECT b.specimen_id, p.breaking_order, p.block_id, ${waits} AS waits, row_number() OVER (
       PARTITION BY p.adhesive, p.joint_type, p.gap_mm, p.exposure ORDER BY ${waits}, ${order}) AS place
       ${ofStudy} AND p.age_months IS NULL AND (${waits} OR (s.standing = 'broken' AND ${wasInSession})))
     WHERE waits AND place <= @spares ORDER BY breaking_order, block_id`,
  )
    .all({ studyId, gluedOn, ageMonths, spares: sparesOfPull(database, { studyId, gluedOn, ageMonths }) })
    .map((row) => row.specimen_id)
}

/** Whether the specimen `s` was in a breaking session of the pull, in SQL. */
const wasInSession = `EXISTS (SELECT 1 FROM breaking_session x, json_each(x.specimen_ids) m, json_each(x.pulls) q
  WHERE m.value = s.specimen_id AND json_extract(q.value, '$.studyId') = @studyId
    AND json_extract(q.value, '$.ageMonths') = @ageMonths
    AND coalesce(json_extract(q.value, '$.gluedOn') = @gluedOn, 1))`

type Found = { specimen_id: number }

function isPlanned(database: Database, studyId: number, ageMonths: number): boolean {
  const found = prepared(database, 'SELECT 1 FROM block WHERE study_id = ? AND age_months = ? LIMIT 1')
  return found.get(studyId, ageMonths) !== undefined
}

/** How many spares of each series a pull takes by the newest word on it that says so. */
function sparesOfPull(database: Database, { studyId, gluedOn, ageMonths }: PullName): number {
  const said = decisionsOnPulls(database, studyId).findLast(
    (one) =>
      one.ageMonths === ageMonths && (one.gluedOn === null || one.gluedOn === gluedOn) && one.blocksPerSeries !== null,
  )
  return said?.blocksPerSeries ?? 0
}
