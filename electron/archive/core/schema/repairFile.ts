import { createHash } from 'node:crypto'
import { closeSync, copyFileSync, existsSync, openSync, readSync, realpathSync, renameSync, rmSync } from 'node:fs'
import BetterSqlite from 'better-sqlite3'
import { Trouble } from '#contract/errors.ts'
import { databaseTrouble, notAnArchive } from '../databaseTrouble.ts'
import { formatVersion, migrations } from '../migrate.ts'
import { applicationId, copyName } from '../openDatabase.ts'
import { takeProgramLock } from '../programLock.ts'
import { damagedCopy } from '../verifiedCopy.ts'
import { repairSchema } from './repairSchema.ts'
import { takeSchema } from './takeSchema.ts'

/** What a repair did. `copy` is null where nothing differed and nothing was done. */
export type Repair = {
  copy: string | null
  /** Names of what was mended, and of what is not a matter of texts and was left. */
  mended: string[]
  left: string[]
}

/**
 * Writes the known texts of tables, indexes and triggers again where they differ, after a copy of the file, byte by byte, that
 * was compared with it. No row of a record is touched. Throws a Trouble that says what stands in the way.
 */
export function repairFile(wantedPath: string, instant: string): Repair {
  if (!existsSync(wantedPath))
    throw new Trouble('archive-missing', `There is no archive ${wantedPath}.`, 'Check the name.')
  const path = realpathSync(wantedPath)
  const lock = takeProgramLock(path)
  try {
    const database = new BetterSqlite(path, { timeout: 5000 })
    try {
      const copy = copyName(path, 'before-repair', instant)
      settleJournal(database, path)
      // Under its name only when it is whole, as every copy
      const unfinished = `${copy}-new`
      copyFileSync(path, unfinished)
      if (sha256Of(path) !== sha256Of(unfinished)) throw damagedCopy(`The copy ${unfinished} is not like the archive.`)
      renameSync(unfinished, copy)
      database.pragma('recursive_triggers = ON')
      const { mended, left } = repairSchema(database, migrations)
      if (mended.length === 0) rmSync(copy)
      const named = (differences: typeof mended) => differences.map(({ object }) => `${object.type} ${object.name}`)
      return { copy: mended.length === 0 ? null : copy, mended: named(mended), left: named(left) }
    } finally {
      database.close()
    }
  } catch (thrown) {
    throw databaseTrouble(thrown, path)
  } finally {
    lock.release()
  }
}

/** Brings what lies in the journal into the file itself, so that the copy of the file is whole. */
function settleJournal(database: BetterSqlite.Database, path: string): void {
  const schema = takeSchema(database)
  const id = Number(database.pragma('application_id', { simple: true }))
  const version = formatVersion(database)
  if (id !== applicationId || version < 1 || version > migrations.length)
    throw notAnArchive(path, 'its mark or format is none that can be repaired')
  database.pragma('wal_checkpoint(TRUNCATE)')
  schema.letGo()
}

function sha256Of(path: string): string {
  const hash = createHash('sha256')
  const file = openSync(path, 'r')
  try {
    const part = Buffer.alloc(1 << 20)
    for (let read = readSync(file, part); read > 0; read = readSync(file, part)) hash.update(part.subarray(0, read))
  } finally {
    closeSync(file)
  }
  return hash.digest('hex')
}
