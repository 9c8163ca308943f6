import type { Migration } from '../migration.ts'

export const migration: Migration = {
  number: 12,
  title: 'why results without a curve are set aside',
  sql: `
ALTER TABLE typed_result_decision ADD COLUMN cause TEXT CHECK (cause <> '');
`,
}
