import type { Migration } from '../migration.ts'

export const migration: Migration = {
  number: 4,
  title: 'by which derivation the current rows were made',
  sql: `
-- One row, or none: then nobody knows which derivation made break_current and specimen_current, and they are made again.
CREATE TABLE derivation (
  derivation_id INTEGER PRIMARY KEY CHECK (derivation_id = 1),
  version       INTEGER NOT NULL
) STRICT;
`,
}
