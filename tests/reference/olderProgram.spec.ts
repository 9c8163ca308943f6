import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import { listQuery } from '#contract/listQuery.ts'
import { changesQuery } from '#contract/reevaluation/changes.ts'
import { olderArchive } from '../archive/core/olderArchive.ts'
import { temporaryFolder } from '../archive/storedStudy.ts'

// An archive with every kind of record, written by the program of format 3 itself, and the lists that this program gave of it
// (format3.sql and format3.lists.json, beside the migrations' tests): a later program shows the same, key for key.

const lists = JSON.parse(
  readFileSync(join(import.meta.dirname, '../archive/core/migrations/format3.lists.json'), 'utf8'),
)

const queries = [
  {},
  { status: 'waiting' },
  { status: 'broken', sort: 'strengthMPa', descending: true },
  { status: 'set-aside' },
  { text: 'c1 loft', sort: 'peakN' },
].map((query) => listQuery.parse(query))

async function eachOf<One, Value>(ones: readonly One[], read: (one: One) => Promise<Value>): Promise<Value[]> {
  const values: Value[] = []
  for (const one of ones) values.push(await read(one))
  return values
}

async function openOlder(): Promise<{ archive: Archive; path: string }> {
  const path = join(temporaryFolder(), 'study.breakledger')
  olderArchive(3, path).close()
  const archive = await openArchive({ path, program: 'newer', clockInstant: () => '2032-01-01T00:00:00.000Z' })
  onTestFinished(() => archive.close())
  return { archive, path }
}

async function listsOf(archive: Archive) {
  const calibrations = await archive.calibrations()
  const reevaluations = await archive.reevaluations()
  const breakIds = await archive.breakIds({ text: '', status: 'all', sort: 'startedAt', descending: false })
  return {
    listSpecimens: await eachOf(queries, (query) => archive.listSpecimens(query)),
    listBreaks: await eachOf(queries, (query) => archive.listBreaks(query)),
    breakIds,
    breaks: await eachOf(breakIds, (breakId) => archive.break(breakId)),
    breakGroups: await eachOf(breakIds, (breakId) => archive.breakGroup(breakId)),
    specimens: await eachOf([1, 2, 3, 4, 5, 6], (specimenId) => archive.specimen(specimenId)),
    waitingSpecimens: await archive.waitingSpecimens(1, 2),
    recoveredWithoutEvaluation: await archive.recoveredWithoutEvaluation(),
    keptWeights: await archive.keptWeights(),
    brokenOffRoutines: await archive.brokenOffRoutines(),
    calibrations,
    calibrationDecisions: await archive.calibrationDecisions(),
    checkWeights: await eachOf(calibrations, ({ calibrationId }) => archive.checkWeights(calibrationId)),
    reevaluations,
    reevaluationChanges: await eachOf(reevaluations, ({ reevaluationId }) =>
      archive.reevaluationChanges(changesQuery.parse({ reevaluationId, sort: 'difference' })),
    ),
    preferences: await archive.preferences(),
    verify: await archive.verify(() => {}, new AbortController().signal),
  }
}

test('gives the lists that the older program gave, key for key, and finds its archive sound', async () => {
  const { head: headThen, ...given } = lists
  const { archive } = await openOlder()
  const { verify, ...listed } = await listsOf(archive)
  const { head, ...checked } = verify
  expect({ ...listed, verify: checked }).toStrictEqual(given)
  expect(head).toMatchObject({ count: headThen.seq, hash: headThen.hash })
})

test('keeps every entry of its ledger, hash for hash', async () => {
  const entries = (database: Database.Database) => database.prepare('SELECT * FROM ledger ORDER BY seq').all()
  const { archive, path } = await openOlder()
  await archive.close()
  const database = new Database(path, { readonly: true })
  onTestFinished(() => void database.close())
  expect(entries(database)).toEqual(entries(olderArchive(3)))
  expect(entries(database).at(-1)).toMatchObject(lists.head)
})
