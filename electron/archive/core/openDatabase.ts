import { accessSync, constants, existsSync, readFileSync, realpathSync, renameSync, rmSync, statSync } from 'node:fs'
import { basename, dirname, extname, join, resolve } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { Trouble } from '#contract/errors.ts'
import type { Database } from './database.ts'
import { databaseTrouble, hasOtherNames, isNoRoom, journalAlone, notAnArchive } from './databaseTrouble.ts'
import { formatVersion, migrate, migrations as releasedMigrations } from './migrate.ts'
import type { Migration } from './migration.ts'
import { makeFile, ownersOnly } from './ownedFile.ts'
import { type ProgramLock, takeProgramLock } from './programLock.ts'
import { knownSchema, refuseOtherSchema } from './schema/knownSchema.ts'
import { verifiedCopy } from './verifiedCopy.ts'

/** "BrkL": marks the file as ours in SQLite's header (bytes 68 to 71). */
export const applicationId = 0x42726b4c

/** SQLite's smallest page, bytes: a shorter file is no database. */
const smallestDatabase = 512

export type OpeningOptions = {
  path: string
  /** write: the one program that may add records. read: looks only, beside a writer if there is one. */
  mode: 'write' | 'read'
  /** Name and version of the program, noted where the format changes. */
  program: string
  /** The wall clock at opening, ISO 8601 UTC. */
  instant: string
}

/** An open archive file. */
export type OpenedArchive = {
  readonly database: Database
  readonly path: string
  /** Breaks that a crash had left unfinished and that this opening sealed. */
  readonly recovered: readonly number[]
  close(): void
}

const openings = new WeakMap<Database, Pick<OpenedArchive, 'path' | 'recovered'>>()

/** Where an open archive lies, and what its opening recovered. */
export function openingOf(database: Database): Pick<OpenedArchive, 'path' | 'recovered'> {
  const opening = openings.get(database)
  if (opening === undefined) throw new RangeError('openingOf requires a database that openDatabase opened')
  return opening
}

/** Brings in order what an earlier program left in an archive that is open for writing; returns the breaks it recovered. */
export type PutInOrder = (database: Database) => number[]

/** Opens, checks, locks, migrates and puts in order; creates an archive in write mode when there is none. Throws a Trouble otherwise. */
export function openDatabase(
  options: OpeningOptions,
  putInOrder: PutInOrder,
  migrations: readonly Migration[] = releasedMigrations,
): OpenedArchive {
  const path = existsSync(options.path) ? realpathSync(options.path) : resolve(options.path)
  let lock: ProgramLock | undefined
  let database: Database | undefined
  try {
    checkPlace(path, options.mode)
    if (options.mode === 'write') lock = takeProgramLock(path)
    if (lock !== undefined && !existsSync(path)) createWhole(path, migrations, options)
    const journalWasThere = existsSync(`${path}-wal`)
    database = options.mode === 'read' ? openForReading(path) : new BetterSqlite(path, { timeout: 5000 })
    const version = checkIdentity(database, path, migrations.length, options.mode)
    // Pages are checked where they are read, so that damage is noticed and not passed on.
    database.pragma('cell_size_check = ON')
    // What a schema says is done only where it is harmless, whoever wrote it.
    database.pragma('trusted_schema = OFF')
    database.pragma('foreign_keys = ON')
    // What is written through a trigger or a table that is not ours is not what was meant to be written.
    if (options.mode === 'write') refuseOtherSchema(database, path, knownSchema(migrations, version))
    if (options.mode === 'write') prepareForWriting(database, path, version, migrations, options)
    const recovered = options.mode === 'write' ? putInOrder(database) : []
    const opened = database
    openings.set(database, { path, recovered })
    return {
      database,
      path,
      recovered,
      close: () => {
        opened.close()
        if (options.mode === 'read' && !journalWasThere) takeJournalAway(path)
        lock?.release()
      },
    }
  } catch (thrown) {
    database?.close()
    lock?.release()
    throw databaseTrouble(thrown, path)
  }
}

/** Opens without changing the archive, also from a medium that cannot be written, or has no room left. */
function openForReading(path: string): Database {
  if (!mayWrite(dirname(path)) && !existsSync(`${path}-wal`)) return openCopy(path)
  const database = new BetterSqlite(path, { readonly: true, timeout: 5000 })
  try {
    // The first look makes the index of the journal
    database.pragma('user_version')
    return database
  } catch (thrown) {
    database.close()
    if (!isNoRoom(thrown) || holdsRecords(`${path}-wal`)) throw thrown
    return openCopy(path)
  }
}

/**
 * SQLite wants to keep its index of the journal beside the file. Where it cannot, nobody writes to the archive either, so a
 * copy in memory is as good; bytes 18 and 19 of the header say that it needs no journal.
 */
function openCopy(path: string): Database {
  const bytes = readFileSync(path)
  bytes.fill(1, 18, 20)
  return new BetterSqlite(bytes, { readonly: true })
}

const holdsRecords = (journal: string) => (statSync(journal, { throwIfNoEntry: false })?.size ?? 0) > 0

/**
 * A reader makes an empty journal where there was none and cannot take it away itself. Who may write can: SQLite removes it when
 * the last connection closes, and keeps it where another program has the archive open by now.
 */
function takeJournalAway(path: string): void {
  if (!mayWrite(path) || !existsSync(`${path}-wal`)) return
  const database = new BetterSqlite(path, { timeout: 0 })
  try {
    database.pragma('user_version')
  } catch (thrown) {
    // It is empty, and does no harm
    if (!isNoRoom(thrown)) throw thrown
  } finally {
    database.close()
  }
}

function mayWrite(folder: string): boolean {
  try {
    accessSync(folder, constants.W_OK)
    return true
  } catch {
    return false
  }
}

function checkPlace(path: string, mode: 'write' | 'read'): void {
  const folder = dirname(path)
  if (!existsSync(folder))
    throw new Trouble('archive-missing', `The folder ${folder} does not exist.`, 'Create the folder or choose another.')
  if (existsSync(path)) {
    const file = statSync(path)
    if (!file.isFile()) throw notAnArchive(path, 'it is no file')
    if (file.size < smallestDatabase)
      throw notAnArchive(path, file.size === 0 ? 'it is empty' : 'it is too short for one')
    // The journal and the lock go by the name, so a program that knows another name would write beside this one.
    if (mode === 'write' && file.nlink > 1) throw hasOtherNames(path, file.nlink)
    accessSync(path, mode === 'write' ? constants.R_OK | constants.W_OK : constants.R_OK)
  } else if (mode === 'read')
    throw new Trouble(
      'archive-missing',
      `There is no archive ${path}.`,
      'Check the name, or start the program without it to create a new archive.',
    )
  else if (existsSync(`${path}-wal`)) throw journalAlone(path)
  // SQLite keeps its journal beside the file, so a folder that cannot be written makes the archive read-only.
  if (mode === 'write') accessSync(folder, constants.W_OK | constants.X_OK)
}

/** Makes a new archive under another name and gives it its own when it is whole, so that no file is ever half an archive. */
function createWhole(path: string, migrations: readonly Migration[], options: OpeningOptions): void {
  const unfinished = `${path}-new`
  const remove = () => {
    for (const ending of ['', '-journal']) rmSync(unfinished + ending, { force: true })
  }
  remove()
  try {
    makeFile(unfinished, ownersOnly)
    const database = new BetterSqlite(unfinished)
    try {
      database.pragma('synchronous = FULL')
      database.pragma(`application_id = ${applicationId}`)
      migrate(database, migrations, options.program, options.instant)
    } finally {
      database.close()
    }
    renameSync(unfinished, path)
  } catch (thrown) {
    remove()
    throw thrown
  }
}

/** Returns the format version. */
function checkIdentity(database: Database, path: string, newest: number, mode: OpeningOptions['mode']): number {
  const version = formatVersion(database)
  const id = Number(database.pragma('application_id', { simple: true }))
  if (id !== applicationId) throw notAnArchive(path, 'it carries the mark of another program, or none')
  if (version > newest)
    throw new Trouble(
      'archive-newer',
      `The archive ${path} has format version ${version}; this program knows versions up to ${newest}.`,
      'Open it with a newer version of the program. It was left as it was.',
    )
  if (mode === 'read' && version < newest)
    throw new Trouble(
      'unsupported',
      `The archive ${path} has the older format version ${version}; reading alone cannot bring it to version ${newest}.`,
      'Open it once with the program itself: it makes a backup and then updates the archive.',
    )
  return version
}

function prepareForWriting(
  database: Database,
  path: string,
  version: number,
  migrations: readonly Migration[],
  options: OpeningOptions,
): void {
  database.pragma('journal_mode = WAL')
  // The bundled SQLite would otherwise use NORMAL in WAL mode and lose the last commits when the power goes.
  database.pragma('synchronous = FULL')
  database.pragma('recursive_triggers = ON')
  if (version < migrations.length) {
    verifiedCopy(database, copyName(path, `format-${version}`, options.instant))
    migrate(database, migrations, options.program, options.instant)
  }
}

/**
 * A free name for a copy: "format-1" of "study.breakledger" is "study-format-1-2031-05-02T101500Z.breakledger", beside it, and
 * the second of the same second "study-format-1-2031-05-02T101500Z-2.breakledger".
 */
export function copyName(path: string, what: string, instant: string): string {
  const extension = extname(path)
  const moment = instant.replace(/\.\d+/, '').replaceAll(':', '')
  const name = join(dirname(path), `${basename(path, extension)}-${what}-${moment}`)
  for (let count = 1; ; count++) {
    const file = `${name}${count === 1 ? '' : `-${count}`}${extension}`
    if (!existsSync(file)) return file
  }
}
