// Held by tests/archive/lists/lists.spec.ts.
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'

/** The title of every study as its newest version has it, by the number of the study. */
export function studyTitles(database: Database): ReadonlyMap<number | null, string> {
  const rows = prepared<{ id: number; title: string }>(
    database,
    `SELECT study_id AS id, json_extract(fields, '$.title') AS title FROM study_revision
     WHERE revision = (SELECT max(revision) FROM study_revision o WHERE o.study_id = study_revision.study_id)`,
  ).all()
  return new Map(rows.map(({ id, title }) => [id, title]))
}
