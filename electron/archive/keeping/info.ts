// Held by tests/archive/core/openDatabase.spec.ts.
import type { ArchiveInfo } from '#contract/keeping/archive.ts'
import type { Database } from '../core/database.ts'
import { formatVersion } from '../core/migrate.ts'
import { openingOf } from '../core/openDatabase.ts'
import { prepared } from '../core/prepared.ts'

/** What an open archive is and holds. */
export function info(database: Database): ArchiveInfo {
  const { path, recovered } = openingOf(database)
  const counts = prepared<{ specimens: number; breaks: number; demo: number }>(
    database,
    `SELECT (SELECT count(*) FROM specimen_current) AS specimens, (SELECT count(*) FROM break_header) AS breaks,
       EXISTS (SELECT 1 FROM specimen_current WHERE demo = 1) AS demo`,
  ).get()!
  return {
    path,
    formatVersion: formatVersion(database),
    specimens: counts.specimens,
    breaks: counts.breaks,
    recovered: [...recovered],
    demo: counts.demo === 1,
  }
}
