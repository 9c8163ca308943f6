import type { PullName } from '#contract/programme/pull.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { shuffled } from '#domain/numbers/shuffled.ts'
import { sparesWaiting } from '#domain/programme/calendar/studyPulls.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { glueUpsInForce } from '../lists/plannedBlock.ts'
import { waitsForPress } from '../lists/waits.ts'
import { studiesWithAddedPulls } from './decisionsOnPulls.ts'
import { pullSources } from './pulls.ts'

/** Glued blocks `p` with their glue-ups `g` and specimens `s`, in SQL. */
export const gluedBlocks = `block p
  JOIN glued_block b ON b.block_id = p.block_id
  JOIN ${glueUpsInForce} g ON g.glue_up_id = b.glue_up_id
  JOIN specimen_current s ON s.specimen_id = b.specimen_id`

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
  const ofPulls = specimensOfPulls(database, pulls).flat()
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

/** What waits of each of some pulls, in the order in which it is to be broken; of one that was added, the spares that it takes. */
export function specimensOfPulls(database: Database, pulls: readonly PullName[]): number[][] {
  const sparesOf = sparesOfPulls(database, pulls)
  const waiting = prepared<{ specimen_id: number }>(
    database,
    `SELECT b.specimen_id FROM ${gluedBlocks} WHERE p.block_id IN (
         SELECT block_id FROM block WHERE study_id = @studyId AND age_months = @ageMonths
         UNION ALL SELECT block_id FROM glued_block WHERE specimen_id IN (SELECT value FROM json_each(@spares)))
       AND (@gluedOn IS NULL OR json_extract(g.fields, '$.gluedOn') = @gluedOn) AND ${waitsForPress('s')}
     ORDER BY p.breaking_order, p.block_id`,
  )
  return pulls.map((pull) =>
    waiting.all({ ...pull, spares: JSON.stringify(sparesOf(pull)) }).map((row) => row.specimen_id),
  )
}

function sparesOfPulls(database: Database, pulls: readonly PullName[]): (pull: PullName) => number[] {
  const asked = new Set(pulls.map(({ studyId }) => studyId))
  const studyIds = studiesWithAddedPulls(database, null).filter((studyId) => asked.has(studyId))
  if (studyIds.length === 0) return () => []
  // All at once, for each reading goes through all sessions
  const { rows } = pullSources(database, studyIds.length === 1 ? studyIds[0]! : null)
  const sources = new Map(rows.map((source) => [source.study.studyId, source]))
  return (pull) => {
    const source = sources.get(pull.studyId)
    return source === undefined ? [] : sparesWaiting(source, pull)
  }
}
