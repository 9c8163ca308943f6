import type { Migration } from '../migration.ts'
import { appendOnly } from './0001.ts'

export const migration: Migration = {
  number: 11,
  title: 'findings that are kept under a name',
  sql: `
CREATE TABLE kept_finding_revision (
  revision_id     INTEGER PRIMARY KEY,
  kept_finding_id INTEGER NOT NULL,
  revision        INTEGER NOT NULL CHECK (revision > 0),
  recorded_at     TEXT NOT NULL,
  by              TEXT NOT NULL,
  reason          TEXT NOT NULL,
  fields          TEXT NOT NULL CHECK (json_valid(fields)),
  UNIQUE (kept_finding_id, revision)
) STRICT;
${appendOnly('kept_finding_revision', 'revision_id = NEW.revision_id OR (kept_finding_id = NEW.kept_finding_id AND revision = NEW.revision)')}
`,
}
