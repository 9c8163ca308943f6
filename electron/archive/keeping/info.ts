import type { ArchiveInfo } from '#contract/keeping/archive.ts'
import type { Database } from '../core/database.ts'
import { formatVersion } from '../core/migrate.ts'
import { openingOf } from '../core/openDatabase.ts'
import { prepared } from '../core/prepared.ts'
import { isSimulated } from '../lists/simulated.ts'

/** Each break with the session that it was captured in and the specimen that it counts for. */
const breaksWithOrigin = `break_header h JOIN capture_session c ON c.session_id = h.session_id
  LEFT JOIN break_current b ON b.break_id = h.break_id LEFT JOIN specimen_current s ON s.specimen_id = b.specimen_id`
const isInvented = `(${isSimulated} OR coalesce(s.demo, 0) = 1)`

/** What an open archive is and holds. */
export function info(database: Database): ArchiveInfo {
  const { path, recovered } = openingOf(database)
  const counts = prepared<{ specimens: number; breaks: number; simulated: number; demo: number; own: number }>(
    database,
    `SELECT (SELECT count(*) FROM specimen_current) AS specimens, (SELECT count(*) FROM break_header) AS breaks,
       (SELECT count(*) FROM ${breaksWithOrigin} WHERE ${isInvented}) AS simulated,
       EXISTS (SELECT 1 FROM specimen_current WHERE demo = 1) AS demo,
       EXISTS (SELECT 1 FROM specimen_current WHERE demo = 0)
         OR EXISTS (SELECT 1 FROM ${breaksWithOrigin} WHERE NOT ${isInvented}) AS own`,
  ).get()!
  return {
    path,
    formatVersion: formatVersion(database),
    specimens: counts.specimens,
    breaks: counts.breaks,
    simulated: counts.simulated,
    recovered: [...recovered],
    demo: counts.demo === 1,
    own: counts.own === 1,
  }
}
