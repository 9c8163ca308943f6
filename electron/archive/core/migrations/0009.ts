import type { Migration } from '../migration.ts'

export const migration: Migration = {
  number: 9,
  title: 'studies, ages and standing in the lists',
  sql: `
-- Derived: of which study, glue-up and pull a specimen is, how old it was, and what became of it.
ALTER TABLE specimen_current ADD COLUMN study_id INTEGER;
ALTER TABLE specimen_current ADD COLUMN glue_up_id INTEGER;
ALTER TABLE specimen_current ADD COLUMN pull_age_months INTEGER;
ALTER TABLE specimen_current ADD COLUMN age_months REAL;
ALTER TABLE specimen_current ADD COLUMN gap_mm REAL;
ALTER TABLE specimen_current ADD COLUMN standing TEXT;
ALTER TABLE specimen_current ADD COLUMN withdrawn INTEGER;
ALTER TABLE specimen_current ADD COLUMN results INTEGER;
-- Holds all that the pulls of every study are counted from.
CREATE INDEX specimen_current_in_pulls ON specimen_current (study_id, glue_up_id, pull_age_months, standing)
  WHERE study_id IS NOT NULL;
`,
}
