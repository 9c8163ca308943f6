import { existsSync, renameSync, rmSync } from 'node:fs'
import BetterSqlite from 'better-sqlite3'
import { Trouble } from '#contract/errors.ts'
import type { Database } from './database.ts'
import { makeFile, permissionsOf } from './ownedFile.ts'

/**
 * Writes a consistent copy of an open database to a new file and proves that it can be read back whole. Only then has the file its
 * name, so that no program that is ended half-way leaves half a copy that looks like a whole one.
 */
export function verifiedCopy(database: Database, file: string): void {
  if (existsSync(file))
    throw new Trouble('conflict', `The file ${file} exists already.`, 'Choose another name for the copy.')
  const unfinished = `${file}-new`
  rmSync(unfinished, { force: true })
  try {
    // Into an empty file, so that the copy is never open to more people than the archive.
    makeFile(unfinished, permissionsOf(database.name))
    database.prepare('VACUUM INTO ?').run(unfinished)
    proveSame(database, unfinished)
    renameSync(unfinished, file)
  } catch (thrown) {
    rmSync(unfinished, { force: true })
    throw thrown
  }
}

function proveSame(database: Database, file: string): void {
  const copy = new BetterSqlite(file, { readonly: true })
  try {
    const faults = copy.pragma('integrity_check', { simple: true })
    if (faults !== 'ok') throw damagedCopy(`The copy ${file} is damaged: ${faults}.`)
    const tables = database
      .prepare<[], { name: string }>(
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name",
      )
      .all()
    for (const { name } of tables) {
      const count = `SELECT count(*) FROM "${name}"`
      if (database.prepare(count).pluck().get() !== copy.prepare(count).pluck().get())
        throw damagedCopy(`The copy ${file} lacks rows of ${name}.`)
    }
  } finally {
    copy.close()
  }
}

/** What is said of a copy that is not what it was copied from. */
export const damagedCopy = (message: string) => new Trouble('archive-damaged', message, 'Check the disk and try again.')
