import type Database from 'better-sqlite3'

/** Changes what the triggers protect, as a person with another tool could, and puts the triggers back as they were. */
export function behindTheTriggers(database: Database.Database, text: string): void {
  const triggers = database
    .prepare<[], { name: string; sql: string }>("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
    .all()
  for (const { name } of triggers) database.exec(`DROP TRIGGER ${name}`)
  database.pragma('foreign_keys = OFF')
  database.exec(text)
  for (const { sql } of triggers) database.exec(sql)
}
