import type { Migration } from '../migration.ts'

export const migration: Migration = {
  number: 13,
  title: 'figures by which specimens are found',
  sql: `
-- Derived: the figures that a row of the list shows, in every unit, as people look for them.
ALTER TABLE specimen_current ADD COLUMN figures TEXT;
`,
}
