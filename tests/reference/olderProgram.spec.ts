import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import { listQuery, noFilter } from '#contract/listQuery.ts'
import { changesQuery } from '#contract/reevaluation/changes.ts'
import { naturalKey } from '#domain/text/naturalOrder.ts'
import { olderArchive } from '../archive/core/olderArchive.ts'
import { temporaryFolder } from '../archive/storedStudy.ts'

// Archives with every kind of record, written by the programs of formats 3, 4 and 5 themselves, and the lists that these programs
// gave of them (format3.sql, format3.lists.json and so on, beside the migrations' tests): a later program shows the same, key for key.

const folder = join(import.meta.dirname, '../archive/core/migrations')
const listsOfOlder = (version: 3 | 4 | 5) =>
  JSON.parse(readFileSync(join(folder, `format${version}.lists.json`), 'utf8'))

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

async function openOlder(version: 3 | 4 | 5): Promise<{ archive: Archive; path: string }> {
  const path = join(temporaryFolder(), 'study.breakledger')
  olderArchive(version, path).close()
  const archive = await openArchive({ path, program: 'newer', clockInstant: () => '2032-01-01T00:00:00.000Z' })
  onTestFinished(() => archive.close())
  return { archive, path }
}

async function listsOf(archive: Archive, specimens: number) {
  const { rows: calibrations } = await archive.calibrations()
  const { rows: reevaluations } = await archive.reevaluations()
  const breakIds = await archive.breakIds({
    text: '',
    status: 'all',
    filter: noFilter,
    sort: 'startedAt',
    descending: false,
  })
  return {
    listSpecimens: await eachOf(queries, (query) => archive.listSpecimens(query)),
    listBreaks: await eachOf(queries, (query) => archive.listBreaks(query)),
    breakIds,
    breaks: await eachOf(breakIds, (breakId) => archive.break(breakId)),
    breakGroups: await eachOf(breakIds, (breakId) => archive.breakGroup(breakId)),
    specimens: await eachOf(
      Array.from({ length: specimens }, (_, i) => i + 1),
      (specimenId) => archive.specimen(specimenId),
    ),
    observations: await archive.observations(),
    waitingSpecimens: await archive.waitingSpecimens(1, 2),
    recoveredWithoutEvaluation: await archive.recoveredWithoutEvaluation(),
    keptWeights: await archive.keptWeights(),
    brokenOffRoutines: (await archive.brokenOffRoutines()).rows,
    calibrations,
    calibrationDecisions: (await archive.calibrationDecisions()).rows,
    checkWeights: await eachOf(calibrations, async ({ calibrationId }) => {
      const { rows } = await archive.checkWeights(calibrationId)
      return rows
    }),
    reevaluations,
    reevaluationChanges: await eachOf(reevaluations, ({ reevaluationId }) =>
      archive.reevaluationChanges(changesQuery.parse({ reevaluationId, sort: 'difference' })),
    ),
    preferences: await archive.preferences(),
    verify: await archive.verify(() => {}, new AbortController().signal),
  }
}

type Page = { total: number; rows: { specimenId: number | null; breakId?: number }[] }

/** A page of a search, without what a later program finds besides, which looks through all that a row shows. */
function foundBefore(given: Page, found: Page): Page {
  const key = ({ specimenId, breakId }: Page['rows'][number]) => breakId ?? specimenId
  const rows = found.rows.filter((row) => given.rows.some((older) => key(older) === key(row)))
  return { ...found, rows, total: found.total - (found.rows.length - rows.length) }
}

/** Where the limits of a practice come from is worded by the program, not kept by the archive. */
const withoutSources = (preferences: unknown) =>
  JSON.parse(JSON.stringify(preferences, (key, value) => (key === 'source' ? undefined : value)))

const foundInSearches = (given: Page[], found: Page[]) =>
  found.map((page, i) => (queries[i]!.text === '' ? page : foundBefore(given[i]!, page)))

/** What was found, without the keys that a later program shows besides. */
function asFarAs(given: unknown, found: unknown): unknown {
  if (Array.isArray(given) && Array.isArray(found)) return found.map((one, i) => asFarAs(given[i], one))
  if (typeof given !== 'object' || given === null || typeof found !== 'object' || found === null) return found
  const known = given as Record<string, unknown>
  const entries = Object.entries(found).filter(([key]) => Object.hasOwn(known, key))
  return Object.fromEntries(entries.map(([key, value]) => [key, asFarAs(known[key], value)]))
}

/** Names as they are compared: each thing is called as the catalogue has it, where it was once shown as it was written. */
const inOneSpelling = (value: unknown) =>
  JSON.parse(
    JSON.stringify(value, (key, text) =>
      ['adhesive', 'jointType', 'exposure'].includes(key) && text !== null ? naturalKey(text) : text,
    ),
  )

test.each([3, 4, 5] as const)(
  'gives the lists that the program of format %i gave, key for key, and finds it sound',
  async (version) => {
    const given: Record<string, unknown> = listsOfOlder(version)
    const { archive } = await openOlder(version)
    const lists: Record<string, unknown> = await listsOf(archive, (given.specimens as unknown[]).length)
    for (const [query, answer] of Object.entries(given)) {
      if (query === 'verify') expect(lists.verify).toMatchObject(answer as object)
      else if (query === 'preferences') {
        const known = asFarAs(answer, lists[query])
        expect(withoutSources(known)).toStrictEqual(withoutSources(answer))
      } else {
        const searched =
          query === 'listSpecimens' || query === 'listBreaks'
            ? foundInSearches(answer as Page[], lists[query] as Page[])
            : lists[query]
        expect(inOneSpelling(asFarAs(answer, searched)), query).toStrictEqual(inOneSpelling(answer))
      }
    }
  },
)

test.each([3, 4, 5] as const)('keeps every entry of the ledger of format %i, hash for hash', async (version) => {
  const entries = (database: Database.Database) => database.prepare('SELECT * FROM ledger ORDER BY seq').all()
  const { archive, path } = await openOlder(version)
  await archive.close()
  const database = new Database(path, { readonly: true })
  onTestFinished(() => void database.close())
  const before = entries(olderArchive(version))
  expect(before.length).toBeGreaterThan(80)
  expect(entries(database).slice(0, before.length)).toEqual(before)
})
