import {
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { beginSession } from '#archive/bench/sessions.ts'
import { appendSamples, beginBreak } from '#archive/breaks/breaks.ts'
import { migrations } from '#archive/core/migrate.ts'
import { applicationId, type OpenedArchive } from '#archive/core/openDatabase.ts'
import { info } from '#archive/keeping/info.ts'
import { openHere } from '#archive/openHere.ts'
import { addSpecimen } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import { header, morning, rampAndFall, session, specimenFields, storeBreak, temporaryFolder } from '../storedStudy.ts'

const newest = migrations.length
const later = { number: newest + 1, title: 'a later one', sql: 'CREATE TABLE later (id INTEGER PRIMARY KEY) STRICT' }

function open(path: string, mode: 'write' | 'read' = 'write', list = migrations): OpenedArchive {
  const archive = openHere({ path, mode, program: 'breakledger test', instant: morning }, undefined, list)
  onTestFinished(() => archive.close())
  return archive
}

function study(): string {
  const path = join(temporaryFolder(), 'study.breakledger')
  const archive = open(path)
  addSpecimen(archive.database, specimenFields('C1-LL-1'), morning, 'bench')
  storeBreak(archive.database, 1)
  archive.close()
  return path
}

test('creates an archive where there is none, with our mark and the durable settings', () => {
  const path = join(temporaryFolder(), 'new.breakledger')
  const { database } = open(path)
  const pragma = (name: string) => database.pragma(name, { simple: true })
  expect(pragma('application_id')).toBe(applicationId)
  expect(pragma('user_version')).toBe(migrations.length)
  expect(pragma('journal_mode')).toBe('wal')
  expect(pragma('synchronous')).toBe(2)
  expect(pragma('foreign_keys')).toBe(1)
})

test('leaves one file that can be copied, and nothing beside it, when closed', () => {
  expect(readdirSync(join(study(), '..'))).toEqual(['study.breakledger'])
})

test('leaves nothing where a new archive cannot be made whole', () => {
  const folder = temporaryFolder()
  const broken = { ...later, sql: `${later.sql}; CREATE TABLE ledger (id INTEGER) STRICT` }
  expect(() => open(join(folder, 'new.breakledger'), 'write', [...migrations, broken])).toThrow(/already exists/)
  expect(readdirSync(folder)).toEqual([])
})

test.runIf(process.platform !== 'win32')('makes files that only their owner may read', () => {
  const path = study()
  open(path)
  const modes = readdirSync(join(path, '..')).map((name) => [name, statSync(join(path, '..', name)).mode & 0o777])
  expect(Object.fromEntries(modes)).toEqual({
    'study.breakledger': 0o600,
    'study.breakledger-lock': 0o600,
    'study.breakledger-shm': 0o600,
    'study.breakledger-wal': 0o600,
  })
})

test('refuses to write to a file that has another name, whoever has it open, and reads it', () => {
  const path = study()
  const first = open(path)
  const other = join(temporaryFolder(), 'other.breakledger')
  linkSync(path, other)
  const refused = expect.objectContaining({ code: 'archive-in-use', message: expect.stringMatching(/2 names/) })
  expect(() => open(other)).toThrow(refused)
  first.close()
  expect(() => open(path)).toThrow(refused)
  expect(info(open(other, 'read').database).breaks).toBe(1)
})

test.each([
  ['an empty file', 0],
  ['a file of one byte', 1],
])('takes %s for no new archive and leaves it as it was', (_name, size) => {
  const path = join(temporaryFolder(), 'other.breakledger')
  writeFileSync(path, 'x'.repeat(size))
  for (const mode of ['write', 'read'] as const)
    expect(() => open(path, mode)).toThrow(
      expect.objectContaining({ code: 'archive-damaged', message: expect.stringMatching(/is not an archive/) }),
    )
  expect(readFileSync(path, 'utf8')).toBe('x'.repeat(size))
  expect(readdirSync(join(path, '..'))).toEqual(['other.breakledger'])
})

test('begins no archive over the journal of one that is gone', () => {
  const path = study()
  open(path)
  const copy = join(temporaryFolder(), 'study.breakledger')
  copyFileSync(`${path}-wal`, `${copy}-wal`)
  expect(() => open(copy)).toThrow(expect.objectContaining({ code: 'archive-missing' }))
  expect(readdirSync(join(copy, '..'))).toEqual(['study.breakledger-wal'])
})

test('makes an archive whole or not at all, and anew after it failed', () => {
  const path = join(temporaryFolder(), 'new.breakledger')
  const failing = { ...later, sql: 'CREATE TABLE later (id NONSENSE) STRICT' }
  expect(() => open(path, 'write', [...migrations, failing])).toThrow(/unknown datatype/)
  expect(existsSync(path)).toBe(false)
  expect(info(open(path).database).breaks).toBe(0)
})

test('leaves nothing beside an archive that it only read', () => {
  const path = study()
  const before = readdirSync(join(path, '..')).toSorted()
  const reader = open(path, 'read')
  expect(info(reader.database).breaks).toBe(1)
  reader.close()
  expect(readdirSync(join(path, '..')).toSorted()).toEqual(before)
})

test('backs an older archive up, proves the backup, then migrates', () => {
  const path = study()
  const { database } = open(path, 'write', [...migrations, later])
  expect(database.pragma('user_version', { simple: true })).toBe(newest + 1)
  const backup = join(path, '..', `study-format-${newest}-2031-05-02T093000Z.breakledger`)
  const copy = open(backup)
  expect(info(copy.database)).toMatchObject({ formatVersion: newest, specimens: 1, breaks: 1 })
})

test('does not migrate when the backup cannot be made', () => {
  // The file system takes names of 255 bytes: this one, but none as long as its backup's.
  const path = join(temporaryFolder(), `${'s'.repeat(230)}.breakledger`)
  open(path).close()
  expect(() => open(path, 'write', [...migrations, later])).toThrow()
  expect(info(open(path).database).formatVersion).toBe(newest)
})

test('refuses an archive of a newer version, names both versions and leaves it as it was', () => {
  const path = study()
  open(path, 'write', [...migrations, later]).close()
  const before = readFileSync(path)
  for (const mode of ['write', 'read'] as const)
    expect(() => open(path, mode)).toThrow(
      expect.objectContaining({
        code: 'archive-newer',
        message: expect.stringMatching(new RegExp(`version ${newest + 1};.* up to ${newest}\\.`)),
      }),
    )
  expect(readFileSync(path)).toEqual(before)
})

test('asks for the program itself when an older archive is only to be read', () => {
  const path = study()
  expect(() => open(path, 'read', [...migrations, later])).toThrow(expect.objectContaining({ code: 'unsupported' }))
})

test('refuses a second writer while the first has it open, and not afterwards', () => {
  const path = study()
  const first = open(path)
  expect(() => open(path)).toThrow(expect.objectContaining({ code: 'archive-in-use' }))
  expect(info(open(path, 'read').database).breaks).toBe(1)
  first.close()
  expect(info(open(path).database).breaks).toBe(1)
})

test('says that the folder or the archive to read is missing, and creates neither', () => {
  const folder = temporaryFolder()
  const missing = join(folder, 'nowhere', 'study.breakledger')
  expect(() => open(missing)).toThrow(expect.objectContaining({ code: 'archive-missing' }))
  expect(() => open(join(folder, 'study.breakledger'), 'read')).toThrow(
    expect.objectContaining({ code: 'archive-missing' }),
  )
  expect(readdirSync(folder)).toEqual([])
})

test.each([
  ['text', (path: string) => writeFileSync(path, 'number,peak_n\n'.repeat(500))],
  ['a folder', (path: string) => mkdirSync(path)],
  [
    'a database of another program',
    (path: string) => new Database(path).exec('CREATE TABLE shelf (id INTEGER)').close(),
  ],
])('refuses %s as no archive and leaves it as it was', (_name, make) => {
  const path = join(temporaryFolder(), 'other.breakledger')
  make(path)
  expect(() => open(path)).toThrow(expect.objectContaining({ code: 'archive-damaged' }))
  expect(() => open(path, 'read')).toThrow(expect.objectContaining({ code: 'archive-damaged' }))
  expect(existsSync(`${path}-wal`)).toBe(false)
})

test('opens a copy of an archive taken while it was in use', () => {
  const path = study()
  const { database } = open(path)
  addSpecimen(database, specimenFields('C1-LL-2'), morning, 'bench')
  const copy = join(temporaryFolder(), 'copy.breakledger')
  for (const ending of ['', '-wal']) copyFileSync(path + ending, copy + ending)
  expect(info(open(copy).database).specimens).toBe(2)
})

test('recovers a break that was cut short, once', () => {
  const path = study()
  const first = open(path)
  const { sessionId } = beginSession(first.database, session)
  const { breakId } = beginBreak(first.database, header(sessionId, null))
  appendSamples(first.database, breakId, rampAndFall(10, 100))
  first.close()
  const second = open(path)
  expect(info(second.database).recovered).toEqual([breakId])
  second.close()
  expect(info(open(path).database).recovered).toEqual([])
})

test('leaves a running break alone when it only reads', () => {
  const path = study()
  const writer = open(path)
  const { sessionId } = beginSession(writer.database, session)
  const { breakId } = beginBreak(writer.database, header(sessionId, null))
  expect(info(open(path, 'read').database).recovered).toEqual([])
  appendSamples(writer.database, breakId, rampAndFall(10, 100))
  expect(writer.database.prepare('SELECT count(*) FROM running_block').pluck().get()).toBe(1)
})

test.each([
  ['a trigger that is gone', 'DROP TRIGGER ledger_is_never_changed', /trigger ledger_is_never_changed: it is missing/],
  [
    'a trigger that changes what is typed',
    `CREATE TRIGGER larger AFTER INSERT ON specimen_current
     BEGIN UPDATE specimen_current SET area_mm2 = area_mm2 * 1.1; END`,
    /trigger larger: the program did not make it/,
  ],
])('takes no record into an archive with %s, says so with the cure, and reads it still', (_name, text, message) => {
  const path = study()
  new Database(path).exec(text).close()
  expect(() => open(path)).toThrow(
    expect.objectContaining({
      code: 'archive-damaged',
      message: expect.stringMatching(message),
      hint: expect.stringMatching(/breakledger repair/),
    }),
  )
  expect(info(open(path, 'read').database).breaks).toBe(1)
})

test('says what is damaged, with the cure, where a text of the schema cannot even be read', () => {
  const path = study()
  const bytes = readFileSync(path)
  // Pages keep what they held before they were split; one of the places is the one that counts.
  for (let at = 0; at >= 0; at = bytes.indexOf('BEGIN SELECT RAISE', at + 1)) if (at > 0) bytes[at]! ^= 1
  writeFileSync(path, bytes)
  expect(() => open(path)).toThrow(
    expect.objectContaining({
      code: 'archive-damaged',
      message: expect.stringMatching(/damaged in the text of one of its tables.*is_/),
      hint: expect.stringMatching(/breakledger repair/),
    }),
  )
  const { database } = open(path, 'read')
  expect(verify(database, () => {}).faults).toEqual([
    { where: 'schema', what: expect.stringMatching(/malformed database schema.*repair/) },
  ])
})
