import type { Database } from '../database.ts'
import { noteSchemaChange, takeSchema } from './takeSchema.ts'

/** A part of a table's text, and what stands in its place from now on. */
export type Rewriting = { readonly table: string; readonly from: string; readonly to: string }

/**
 * Writes other conditions into the texts of tables and leaves their rows where they are; the columns must stay what they are.
 * Call it inside a transaction. Throws RangeError where a text does not hold the part just once.
 */
export function rewriteTables(database: Database, rewritings: readonly Rewriting[]): void {
  const schema = takeSchema(database)
  try {
    const textOf = database.prepare("SELECT sql FROM sqlite_schema WHERE type = 'table' AND name = ?").pluck()
    const write = database.prepare("UPDATE sqlite_schema SET sql = ? WHERE type = 'table' AND name = ?")
    for (const { table, from, to } of rewritings) {
      const parts = String(textOf.get(table)).split(from)
      if (parts.length !== 2) throw new RangeError(`rewriteTables requires "${from}" once in the text of ${table}`)
      write.run(parts.join(to), table)
    }
    noteSchemaChange(database)
  } finally {
    schema.letGo()
  }
}
