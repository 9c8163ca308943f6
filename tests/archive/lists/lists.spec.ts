import { expect, onTestFinished, test, vi } from 'vitest'
import { addAssessment } from '#archive/breaks/assessments.ts'
import { readBlocks, readBlocksText } from '#archive/breaks/curveStore.ts'
import { addDecision } from '#archive/breaks/decisions.ts'
import { storeRecord } from '#archive/core/recordKind.ts'
import { inTransaction } from '#archive/core/transaction.ts'
import { breakIds, listBreaks, specimenListText } from '#archive/lists/lists.ts'
import { searchCondition, teachSearch } from '#archive/lists/search/listSearch.ts'
import { breaksOfSpecimenText } from '#archive/lists/summaries.ts'
import { newestStudy } from '#archive/programme/studies.ts'
import { studyKind } from '#archive/programme/studyKinds.ts'
import { listSpecimens, specimen, waitingSpecimens } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens, correctSpecimen } from '#archive/specimens/specimens.ts'
import { addDialReadings } from '#archive/specimens/typedResults.ts'
import { type ListQuery, listQuery } from '#contract/listQuery.ts'
import { specimenRecord, specimenSummary } from '#contract/specimens/specimenRecord.ts'
import { pulledStudy } from '../pulledStudy.ts'
import { archiveInMemory, morning, rampAndFall, specimenFields, storeBreak } from '../storedStudy.ts'

// Specimens 1 to 4; breaks: 1 of specimen 1 (6 MPa), 2 of specimen 2 (9 MPa), 3 an unloading of specimen 3.
function study() {
  const database = archiveInMemory()
  addSpecimens(
    database,
    [
      specimenFields('C1-LL-10', { exposure: 'bilge' }),
      specimenFields('C1-LL-2', { areaMm2: 400 }),
      specimenFields('R2-LL-1', { adhesive: 'resorcinol R2', notes: 'Planed twice' }),
      specimenFields('U3-LL-1', { adhesive: 'polyurethane U3', areaMm2: null }),
    ],
    morning,
    'bench',
  )
  storeBreak(database, 1, rampAndFall(100, 360_000))
  storeBreak(database, 2, rampAndFall(100, 360_000))
  storeBreak(database, 3, rampAndFall(100, 100_000), { outcome: 'unloading' })
  return database
}

const query = (change: Partial<ListQuery> = {}) => listQuery.parse(change)
const numbers = (rows: { fields: { number: string } }[]) => rows.map((row) => row.fields.number)
const decision = { recordedAt: morning, by: 'bench', reason: 'wrong specimen', specimenId: null }

test('lists specimens in natural order of number, forwards and backwards, in pages', () => {
  const database = study()
  expect(numbers(listSpecimens(database, query()).rows)).toEqual(['C1-LL-2', 'C1-LL-10', 'R2-LL-1', 'U3-LL-1'])
  expect(numbers(listSpecimens(database, query({ descending: true })).rows)[0]).toBe('U3-LL-1')
  const page = listSpecimens(database, query({ offset: 1, limit: 2 }))
  expect(page.total).toBe(4)
  expect(numbers(page.rows)).toEqual(['C1-LL-10', 'R2-LL-1'])
})

test('finds specimens in which every word occurs, in any field and any case', () => {
  const database = study()
  expect(numbers(listSpecimens(database, query({ text: 'casein BILGE' })).rows)).toEqual(['C1-LL-10'])
  expect(numbers(listSpecimens(database, query({ text: 'planed' })).rows)).toEqual(['R2-LL-1'])
  expect(listSpecimens(database, query({ text: 'casein planed' })).total).toBe(0)
  expect(listSpecimens(database, query({ text: '100% _' })).total).toBe(0)
})

test('finds as many words as a text may hold, and takes no longer text', () => {
  const database = study()
  const most = '-ll '.repeat(250)
  expect(listSpecimens(database, query({ text: most })).total).toBe(4)
  expect(listBreaks(database, query({ text: most })).total).toBe(3)
  expect(() => query({ text: `${most}c` })).toThrow(/1000/)
})

test('shows the break in force with its strength, in lines that keep to the contract', () => {
  const { rows } = listSpecimens(study(), query())
  for (const row of rows) expect(specimenSummary.parse(row)).toEqual(row)
  // 3600 N over 400 mm2 and over 600 mm2
  expect(rows.map((row) => row.breakInForce?.strengthMPa)).toEqual([9, 6, undefined, undefined])
})

test('sorts by strength with those that have none last, whichever the direction', () => {
  const database = study()
  const ascending = query({ sort: 'strengthMPa' })
  expect(numbers(listSpecimens(database, ascending).rows).slice(0, 2)).toEqual(['C1-LL-10', 'C1-LL-2'])
  expect(numbers(listSpecimens(database, { ...ascending, descending: true }).rows).slice(0, 2)).toEqual([
    'C1-LL-2',
    'C1-LL-10',
  ])
})

test('gives an unloading its load but no strength, and lists it after all breaks, until a person says that it failed', () => {
  const database = study()
  const weak = storeBreak(database, 3, rampAndFall(100, 60_000))
  const rows = () => listBreaks(database, query({ sort: 'strengthMPa' })).rows
  // By hand: 600 N, 3600 N and 3600 N over 600, 600 and 400 mm2; the unloading of 1000 N would stand between them.
  expect(rows().map((row) => [row.breakId, row.peakN, row.strengthMPa])).toEqual([
    [weak, 600, 1],
    [1, 3600, 6],
    [2, 3600, 9],
    [3, 1000, null],
  ])
  expect(specimen(database, 3).breaks.map((row) => row.strengthMPa)).toContain(null)
  const sample = { timeS: 0.099, reading: 100_000 }
  addDecision(database, { ...decision, breakId: 3, kind: 'peak-picked', sample })
  expect(rows().map((row) => [row.breakId, row.strengthMPa])).toEqual([
    [weak, 1],
    [3, expect.closeTo(1000 / 600, 12)],
    [1, 6],
    [2, 9],
  ])
})

test.each(listQuery.def.shape.sort.unwrap().options)('sorts both lists by %s', (sort) => {
  const database = study()
  expect(listSpecimens(database, query({ sort })).rows).toHaveLength(4)
  expect(listBreaks(database, query({ sort, descending: true })).rows).toHaveLength(3)
})

test('lets a specimen wait until it has a break that counts', () => {
  const database = study()
  expect(numbers(listSpecimens(database, query({ status: 'waiting' })).rows)).toEqual(['R2-LL-1', 'U3-LL-1'])
  expect(numbers(listSpecimens(database, query({ status: 'broken' })).rows)).toEqual(['C1-LL-2', 'C1-LL-10'])
  addDecision(database, { ...decision, breakId: 1, kind: 'set-aside' })
  expect(numbers(listSpecimens(database, query({ status: 'waiting' })).rows)).toEqual([
    'C1-LL-10',
    'R2-LL-1',
    'U3-LL-1',
  ])
  expect(numbers(listSpecimens(database, query({ status: 'set-aside' })).rows)).toEqual(['C1-LL-10'])
  addDecision(database, { ...decision, breakId: 1, kind: 'taken-back' })
  expect(numbers(listSpecimens(database, query({ status: 'waiting' })).rows)).toEqual(['R2-LL-1', 'U3-LL-1'])
  expect(listSpecimens(database, query({ status: 'set-aside' })).total).toBe(0)
})

test('gives the waiting specimens after a given one, also after one that waits no more', () => {
  const database = study()
  expect(numbers(waitingSpecimens(database, null, 10).rows)).toEqual(['R2-LL-1', 'U3-LL-1'])
  expect(numbers(waitingSpecimens(database, 1, 1).rows)).toEqual(['R2-LL-1'])
  expect(waitingSpecimens(database, 3, 10)).toMatchObject({ total: 2, rows: [{ fields: { number: 'U3-LL-1' } }] })
  expect(waitingSpecimens(database, 4, 10).rows).toEqual([])
})

test('moves a break to another specimen, or to none, when it is reassigned', () => {
  const database = study()
  addDecision(database, { ...decision, breakId: 1, kind: 'reassigned', specimenId: 4 })
  expect(specimen(database, 1).breaks).toEqual([])
  expect(specimen(database, 1).current.breakInForce).toBeNull()
  expect(specimen(database, 4).breaks.map((row) => row.breakId)).toEqual([1])
  // U3-LL-1 has no known area.
  expect(specimen(database, 4).current.breakInForce).toMatchObject({ breakId: 1, peakN: 3600, strengthMPa: null })
  addDecision(database, { ...decision, breakId: 1, kind: 'reassigned', specimenId: null })
  expect(specimen(database, 4).breaks).toEqual([])
  const byTime = query({ sort: 'startedAt' })
  expect(listBreaks(database, byTime).rows[0]).toMatchObject({ breakId: 1, specimenId: null, number: null })
})

test('takes the newest break that counts as the one in force', () => {
  const database = study()
  storeBreak(database, 1, rampAndFall(100, 600_000))
  expect(specimen(database, 1).current.breakInForce?.breakId).toBe(4)
  addDecision(database, { ...decision, breakId: 4, kind: 'set-aside' })
  const record = specimen(database, 1)
  expect(record.current.breakInForce?.breakId).toBe(1)
  expect(record.breaks.map((row) => row.setAside)).toEqual([null, 'wrong specimen'])
  expect(specimenRecord.parse(record)).toEqual(record)
})

test('shows the newest assessment and finds breaks by their note', () => {
  const database = study()
  const assessment = { breakId: 2, recordedAt: morning, by: 'bench', failurePattern: 'CF' as const }
  addAssessment(database, { ...assessment, woodFailurePercent: 40, note: 'shiny' })
  addAssessment(database, { ...assessment, woodFailurePercent: 75, note: 'Starved joint' })
  expect(listBreaks(database, query({ text: 'starved c1-ll' })).rows).toMatchObject([
    { breakId: 2, woodFailurePercent: 75, failurePattern: 'CF', note: 'Starved joint' },
  ])
  expect(listBreaks(database, query({ text: 'shiny' })).total).toBe(0)
})

test('tells breaks that count from those set aside', () => {
  const database = study()
  addDecision(database, { ...decision, breakId: 2, kind: 'set-aside' })
  const ids = (status: ListQuery['status']) => listBreaks(database, query({ status })).rows.map((row) => row.breakId)
  expect(ids('broken')).toEqual([1])
  expect(ids('set-aside')).toEqual([2])
  expect(ids('waiting')).toEqual([])
})

test('follows a corrected specimen in the list of breaks', () => {
  const database = study()
  correctSpecimen(database, 1, specimenFields('C1-LL-10', { areaMm2: 300 }), morning, 'bench', 'measured again')
  const byTime = query({ sort: 'startedAt' })
  expect(listBreaks(database, byTime).rows[0]).toMatchObject({ strengthMPa: 12, areaMm2: 300 })
})

function plan(database: ReturnType<typeof study>, text: string, ...values: unknown[]): string {
  const rows = database.prepare<unknown[], { detail: string }>(`EXPLAIN QUERY PLAN ${text}`).all(...values)
  return rows.map((row) => row.detail).join('\n')
}

test('walks the list of specimens along its index, without sorting', () => {
  const database = study()
  teachSearch(database)
  const { condition, values } = searchCondition(['loft', 'chipped'], 'specimens')
  for (const steps of [
    plan(database, specimenListText(query(), condition), ...values, 200, 0),
    plan(database, specimenListText(query()), 200, 0),
  ]) {
    expect(steps).toMatch(/USING (COVERING )?INDEX specimen_current_by_number/)
    expect(steps).not.toContain('TEMP B-TREE')
  }
})

test('reads a page with as many statements for many rows as for few', () => {
  const database = archiveInMemory()
  const all = Array.from({ length: 40 }, (_, at) => specimenFields(`A-${at + 1}`))
  addSpecimens(database, all, morning, 'bench')
  for (let id = 1; id <= 10; id++) storeBreak(database, id)
  const reading = {
    resolutionN: null,
    readBy: '',
    note: '',
    brokenOn: null,
    woodFailurePercent: null,
    failurePattern: null,
  }
  const readings = Array.from({ length: 10 }, (_, at) => ({ ...reading, specimenId: 11 + at, peakN: 4000 }))
  addDialReadings(database, readings, morning, 'bench')
  const statement = Object.getPrototypeOf(database.prepare('SELECT 1'))
  const counted = [vi.spyOn(statement, 'get'), vi.spyOn(statement, 'all')]
  onTestFinished(() => counted.forEach((one) => void one.mockRestore()))
  const statements = (limit: number) => {
    const before = counted.reduce((sum, { mock }) => sum + mock.calls.length, 0)
    listSpecimens(database, query({ limit, sort: 'peakN' }))
    listBreaks(database, query({ limit }))
    return counted.reduce((sum, { mock }) => sum + mock.calls.length, 0) - before
  }
  expect(statements(12)).toBeGreaterThan(0)
  expect(statements(40)).toBe(statements(12))
})

test('finds the breaks of a specimen and the blocks of a curve by index, without a scan', () => {
  const database = study()
  const breaks = plan(database, breaksOfSpecimenText, 1)
  expect(breaks).toContain('USING COVERING INDEX break_current_of_specimen')
  expect(breaks).not.toMatch(/SCAN|TEMP B-TREE/)
  const blocks = plan(database, readBlocksText.curve_block, 1)
  expect(blocks).toContain('SEARCH curve_block USING INDEX')
  expect(blocks).not.toContain('TEMP B-TREE')
  expect(readBlocks(database, 'curve_block', 1).timeUs).toHaveLength(100)
})

test('gives the numbers of all breaks that fit, in the order of the list', () => {
  const database = study()
  addDecision(database, { ...decision, breakId: 2, kind: 'set-aside' })
  for (const sort of ['number', 'peakN', 'strengthMPa', 'startedAt'] as const)
    for (const descending of [false, true])
      for (const change of [{}, { status: 'broken' }, { status: 'set-aside' }, { text: 'resorcinol' }] as const) {
        const { offset, limit, ...rest } = query({ ...change, sort, descending })
        const { rows } = listBreaks(database, { ...rest, offset, limit })
        expect(breakIds(database, rest)).toEqual(rows.map(({ breakId }) => breakId))
      }
  expect(breakIds(database, query({ text: 'no such word' }))).toEqual([])
  expect(breakIds(database, query({ offset: 2, limit: 1 }))).toHaveLength(3)
  expect(listBreaks(database, query({ text: 'loft', offset: 50 }))).toMatchObject({
    total: breakIds(database, query({ text: 'loft' })).length,
    rows: [],
  })
})

test('says of the block of a break what the list of specimens says, and finds both by the title of their study', () => {
  const database = archiveInMemory()
  const { studyId } = pulledStudy(database)
  storeBreak(database, null)
  const before = newestStudy(database, studyId)
  const renamed = { ...before, revision: 2, fields: { ...before.fields, title: 'Which one for the Ribs' } }
  inTransaction(database, () => storeRecord(database, studyKind, renamed))
  const found = query({ text: 'RIBS which', sort: 'startedAt' })
  const breaks = listBreaks(database, found)
  const specimens = listSpecimens(database, { ...found, status: 'broken' })
  expect(breaks.total).toBe(3)
  expect(listSpecimens(database, found).total).toBe(11)
  for (const { specimenId, block } of breaks.rows) {
    const { named, fields, ageMonths, study } = specimens.rows.find((row) => row.specimenId === specimenId)!
    const { lot, wood, board, place } = named
    const { bondLineGapMm, gluedOn } = fields
    expect(block).toEqual({ lot, wood, board, place, bondLineGapMm, gluedOn, ageMonths, study })
    expect(study).toBe('Which one for the Ribs')
  }
  expect(listBreaks(database, query({ text: 'none' })).rows.map(({ block }) => block)).toEqual([null])
})
