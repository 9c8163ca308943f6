import type { Database } from '../database.ts'

/**
 * Lets a connection read a database in whose schema a text cannot be understood, and write to the schema itself. Ends with
 * `letGo`; between the two, nothing but the schema is to be written.
 */
export function takeSchema(database: Database): { letGo(): void } {
  database.unsafeMode(true)
  database.pragma('writable_schema = ON')
  return {
    letGo() {
      database.pragma('writable_schema = RESET')
      database.unsafeMode(false)
    },
  }
}

/** Moves the number by which other connections see that they must read the schema again. Call it while the schema is taken. */
export function noteSchemaChange(database: Database): void {
  database.pragma(`schema_version = ${Number(database.pragma('schema_version', { simple: true })) + 1}`)
}
