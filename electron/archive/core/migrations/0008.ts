import type { Migration } from '../migration.ts'

export const migration: Migration = {
  number: 8,
  title: 'results without a curve in the lists',
  sql: `
-- The result without a curve that counts where no break does, and the strength that lists sort by.
ALTER TABLE specimen_current ADD COLUMN typed_result_in_force INTEGER;
ALTER TABLE specimen_current ADD COLUMN strength_mpa REAL;
DROP INDEX specimen_current_waiting;
CREATE INDEX specimen_current_waiting ON specimen_current (number_key, specimen_id)
  WHERE break_in_force IS NULL AND typed_result_in_force IS NULL;
CREATE INDEX specimen_current_typed ON specimen_current (specimen_id) WHERE typed_result_in_force IS NOT NULL;
`,
}
