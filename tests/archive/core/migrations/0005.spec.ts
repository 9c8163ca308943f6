import { execFileSync, spawnSync } from 'node:child_process'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { beginSession, keepRejectedLines } from '#archive/bench/sessions.ts'
import { addDecision } from '#archive/breaks/decisions.ts'
import { formatVersion, migrate, migrations } from '#archive/core/migrate.ts'
import { openHere } from '#archive/openHere.ts'
import { decideReevaluation } from '#archive/reevaluation/reevaluations.ts'
import { verify } from '#archive/verify/verify.ts'
import { expectAppendOnly } from '../../appendOnly.ts'
import { behindTheTriggers } from '../../behindTheTriggers.ts'
import { storeReevaluation } from '../../storedReevaluation.ts'
import { archiveInFormat, archiveInMemory, morning, session, storeBreak, temporaryFolder } from '../../storedStudy.ts'
import { everyRow, olderArchive } from '../olderArchive.ts'

const later = '2032-01-01T00:00:00.000Z'
const shellIsThere = spawnSync('sqlite3', ['--version']).status === 0

const migrated = (version: 1 | 2 | 3 | 4, path?: string) => {
  const database = olderArchive(version, path)
  migrate(database, migrations.slice(0, 5), 'newer', later)
  return database
}

test.each([1, 2, 3, 4] as const)('leaves every record and every hash of format %i as it was', (version) => {
  const before = olderArchive(version)
  migrate(before, migrations.slice(0, 4), 'newer', later)
  const database = migrated(version)
  expect(formatVersion(database)).toBe(5)
  const chained = ['ledger', 'format_history']
  expect(everyRow(database, chained)).toEqual(everyRow(before, chained))
  const [entries, entriesBefore] = [everyRow(database).ledger!, everyRow(before).ledger!]
  expect(entries.slice(0, entriesBefore.length)).toEqual(entriesBefore)
  migrate(database, migrations, 'newer', later)
  expect(verify(database, () => {}).faults).toEqual([])
})

test('enters formats and rejected lines that are there, at the moment of the migration', () => {
  const database = migrated(4)
  const entries = database
    .prepare(
      `SELECT kind, record_id, recorded_at, content FROM ledger
       WHERE kind IN ('format', 'rejected-lines') ORDER BY seq`,
    )
    .all() as { kind: string; record_id: number; recorded_at: string; content: string }[]
  expect(entries.map(({ kind, record_id }) => [kind, record_id])).toEqual([
    ...[1, 2, 3, 4].map((version) => ['format', version]),
    ['rejected-lines', 1],
    ['rejected-lines', 2],
    ['format', 5],
  ])
  expect(new Set(entries.map(({ recorded_at }) => recorded_at))).toEqual(new Set([later]))
  expect(entries[0]!.content).toBe(
    '{"formatVersion":1,"program":"breakledger 0.1.0","reachedAt":"2031-05-02T09:30:00.000Z"}',
  )
  const [line] = database.prepare<[], { example: Buffer }>('SELECT example FROM rejected_line').all()
  expect(JSON.parse(entries[4]!.content)).toMatchObject({ rejectedLineId: 1, example: line!.example.toString('hex') })
})

test.each([
  ['the program that brought it to a format', "UPDATE format_history SET program = 'other' WHERE format_version > 5"],
  ['a format that it never had', `INSERT INTO format_history VALUES (99, '${morning}', 'other')`],
  ['a rejected line', "UPDATE rejected_line SET example = CAST('!' AS BLOB) WHERE rejected_line_id = 1"],
  ['a rejected line that is gone', 'DELETE FROM rejected_line WHERE rejected_line_id = 2'],
])('lets verify notice another hand in %s', (_name, text) => {
  const database = archiveInMemory()
  const { sessionId } = beginSession(database, session)
  for (const line of ['?', '#']) keepRejectedLines(database, sessionId, morning, 3, new TextEncoder().encode(line))
  expect(verify(database, () => {}).faults).toEqual([])
  behindTheTriggers(database, text)
  expect(verify(database, () => {}).faults).toHaveLength(1)
})

test('keeps format_history append-only, whoever writes', () => {
  const database = archiveInMemory()
  expectAppendOnly(database, 'format_history', 'format_version')
})

// Sources of the expectation: json_valid(NULL) was 0 up to SQLite 3.41 (release history of SQLite, 3.42.0), and a CHECK that
// gives 0 is broken; the shell of an older system says so of any row that has a NULL there.
test.runIf(shellIsThere)('is sound by the sqlite3 of the system, whichever version that is', () => {
  const path = join(temporaryFolder(), 'study.breakledger')
  migrated(4, path).close()
  expect(execFileSync('sqlite3', [path, 'PRAGMA integrity_check'], { encoding: 'utf8' })).toBe('ok\n')
})

test('asks for no condition of NULL that an older SQLite would deny', () => {
  const texts = archiveInFormat(5)
    .prepare("SELECT sql FROM sqlite_schema WHERE type = 'table'")
    .pluck()
    .all() as string[]
  const optional = texts.flatMap((text) => [...text.matchAll(/^\s*(\w+) +TEXT CHECK \((.*json_valid.*)\)[,\n]/gm)])
  expect(optional.map(([, column, condition]) => [column, condition])).toEqual(
    ['tare', 'circumstances'].map((column) => [column, `${column} IS NULL OR json_valid(${column})`]),
  )
  expect(texts.join('\n')).toContain('course TEXT CHECK (course IS NULL OR json_valid(course))')
})

test('lists no kinds in a table; the contract refuses those that are none', () => {
  const database = archiveInMemory()
  const texts = database.prepare("SELECT sql FROM sqlite_schema WHERE type = 'table'").pluck().all() as string[]
  expect(texts.filter((text) => /\bkind\b[^,]*\bIN \(/.test(text))).toEqual([])
  storeBreak(database, null)
  const word = { breakId: 1, recordedAt: later, by: 'bench', reason: 'why', specimenId: null }
  expect(() => addDecision(database, { ...word, kind: 'deleted' as 'taken-back' })).toThrow(/kind/)
  expect(() => addDecision(database, { ...word, kind: 'set-aside', cause: 'bad luck' as 'other' })).toThrow(/cause/)
  const reevaluationId = storeReevaluation(database, [1], null)
  const decided = { reevaluationId, recordedAt: later, by: 'bench', reason: 'why', kind: 'kept' as 'adopted' }
  expect(() => decideReevaluation(database, decided)).toThrow(/kind/)
})

test('is taken by a program that has the archive open to read, and by one that opens it afterwards', () => {
  const path = join(temporaryFolder(), 'study.breakledger')
  olderArchive(4, path).close()
  const reader = new Database(path, { readonly: true })
  expect(reader.prepare('SELECT count(*) FROM decision').pluck().get()).toBe(10)
  openHere({ path, mode: 'write', program: 'newer', instant: later }).close()
  expect(reader.prepare("SELECT sql FROM sqlite_schema WHERE name = 'decision'").pluck().get()).toContain("kind <> ''")
  reader.close()
  const { database, close } = openHere({ path, mode: 'write', program: 'newer', instant: later })
  addDecision(database, {
    breakId: 1,
    recordedAt: later,
    by: 'bench',
    reason: 'why',
    specimenId: null,
    kind: 'set-aside',
  })
  expect(verify(database, () => {}).faults).toEqual([])
  close()
})
