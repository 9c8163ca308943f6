import type { Migration } from '../migration.ts'
import { appendOnly } from './0001.ts'
import { signed } from './0006.ts'

export const migration: Migration = {
  number: 14,
  title: 'corrections of glue-ups',
  sql: `
CREATE TABLE glue_up_correction (
  glue_up_correction_id INTEGER PRIMARY KEY,${signed}
  reason     TEXT NOT NULL CHECK (reason <> ''),
  glue_up_id INTEGER NOT NULL REFERENCES glue_up (glue_up_id),
  fields     TEXT NOT NULL CHECK (json_valid(fields))
) STRICT;
CREATE INDEX glue_up_correction_of ON glue_up_correction (glue_up_id, glue_up_correction_id);
${appendOnly('glue_up_correction', 'glue_up_correction_id = NEW.glue_up_correction_id')}
`,
}
