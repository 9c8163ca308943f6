import type Database from 'better-sqlite3'

const statements = new WeakMap<Database.Database, Map<string, Database.Statement<unknown[], unknown>>>()

/** A statement of that text, compiled once for each connection. `Row` is what the text promises to return. */
export function prepared<Row = unknown>(database: Database.Database, text: string): Database.Statement<unknown[], Row> {
  let known = statements.get(database)
  if (known === undefined) {
    known = new Map()
    statements.set(database, known)
  }
  let statement = known.get(text)
  if (statement === undefined) {
    statement = database.prepare<unknown[], unknown>(text)
    known.set(text, statement)
  }
  return statement as Database.Statement<unknown[], Row>
}
