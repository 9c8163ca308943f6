import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { onTestFinished } from 'vitest'
import { applicationId } from '#archive/core/openDatabase.ts'

/**
 * An archive that an older version of the program wrote, from its dump beside the tests of the migrations. Break 1 has two
 * evaluations (the first with a pop-in) and an assessment; break 2 was set aside, taken back, moved to specimen 1 and set
 * aside again; break 3 still runs. Format 2 also has every kind of record that calibrating makes. Format 3 has a study of its
 * own, with every kind of record and of decision; none of its captures runs. Format 4 is that study brought over, with a break
 * more and one that runs. Format 5 is that one brought over, with specimens whose names differ by case, a hyphen or one letter.
 */
export function olderArchive(version: 1 | 2 | 3 | 4 | 5, path = ':memory:'): Database.Database {
  const database = new Database(path)
  onTestFinished(() => void database.close())
  database.exec(readFileSync(join(import.meta.dirname, `migrations/format${version}.sql`), 'utf8'))
  database.pragma(`application_id = ${applicationId}`)
  database.pragma(`user_version = ${version}`)
  database.pragma('foreign_keys = ON')
  database.pragma('recursive_triggers = ON')
  return database
}

/** Every row of every table, but for those named. */
export function everyRow(database: Database.Database, except: readonly string[] = []): Record<string, unknown[]> {
  const tables = database
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
    .pluck()
    .all() as string[]
  return Object.fromEntries(
    tables
      .filter((name) => !except.includes(name))
      .map((name) => [name, database.prepare(`SELECT * FROM ${name}`).all()]),
  )
}
