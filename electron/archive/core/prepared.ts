import type { Statement } from 'better-sqlite3'
import type { Database } from './database.ts'

const statements = new WeakMap<Database, Map<string, Statement<unknown[], unknown>>>()

/** A statement of that text, compiled once for each connection. `Row` is what the text promises to return. */
export function prepared<Row = unknown>(database: Database, text: string): Statement<unknown[], Row> {
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
  return statement as Statement<unknown[], Row>
}
