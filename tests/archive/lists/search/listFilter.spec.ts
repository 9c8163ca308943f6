import type Database from 'better-sqlite3'
import { beforeEach, expect, test } from 'vitest'
import { listBreaks } from '#archive/lists/lists.ts'
import { addCatalogueEntry, mergeCatalogueEntries } from '#archive/programme/catalogue.ts'
import { listSpecimens } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { type ListFilter, listQuery } from '#contract/listQuery.ts'
import { pulledStudy } from '../../pulledStudy.ts'
import { archiveInMemory, morning, specimenFields, storeBreak } from '../../storedStudy.ts'

let database: Database.Database
beforeEach(() => {
  database = archiveInMemory()
})

const found = (filter: Partial<ListFilter>, change: object = {}) =>
  listSpecimens(database, listQuery.parse({ filter, ...change })).rows.map(({ fields }) => fields.number)

const common = { wood: 'beech', place: 'shelf 1', exposure: 'loft', jointType: 'lap' }
function store() {
  addSpecimens(
    database,
    [
      specimenFields('A-1', { ...common, adhesive: 'casein C1', lot: '7', board: 'plank 1', bondLineGapMm: 0 }),
      specimenFields('A-2', { ...common, adhesive: 'casein-C1', lot: '8', board: 'plank 2', bondLineGapMm: 0.5 }),
      specimenFields('A-3', {
        ...common,
        adhesive: 'epoxy E4',
        lot: '7',
        wood: 'ash',
        exposure: 'bilge',
        place: 'box',
      }),
    ],
    morning,
    'bench',
  )
}

test.each<[Partial<ListFilter>, string[]]>([
  [{}, ['A-1', 'A-2', 'A-3']],
  [{ adhesive: 'CASEIN c1' }, ['A-1']],
  [{ lot: '7' }, ['A-1', 'A-3']],
  [{ lot: '7', adhesive: 'epoxy E4' }, ['A-3']],
  [{ wood: 'ash' }, ['A-3']],
  [{ board: 'plank 2' }, ['A-2']],
  [{ jointType: 'lap' }, ['A-1', 'A-2', 'A-3']],
  [{ exposure: 'bilge' }, ['A-3']],
  [{ place: 'box' }, ['A-3']],
  [{ gapLeastMm: 0.1 }, ['A-2']],
  [{ gapMostMm: 0.1 }, ['A-1', 'A-3']],
  [{ exposure: 'nowhere' }, []],
])('lists what fits %o', (filter, numbers) => {
  store()
  expect(found(filter)).toEqual(numbers)
})

test('a name stands for all that was merged into it, and is asked beside a search and the state', () => {
  store()
  const from = addedId('casein-C1')
  mergeCatalogueEntries(database, from, addedId('casein C1'), morning, { by: 'bench', reason: 'the same glue' })
  for (const adhesive of ['casein C1', 'casein-C1']) expect(found({ adhesive })).toEqual(['A-1', 'A-2'])
  expect(found({ adhesive: 'casein C1' }, { text: 'a-2' })).toEqual(['A-2'])
  expect(found({ adhesive: 'casein C1' }, { status: 'broken' })).toEqual([])
  const [, second] = listSpecimens(database, listQuery.parse({})).rows
  expect([second!.fields.adhesive, second!.named.adhesive]).toEqual(['casein-C1', 'casein C1'])
})

function addedId(name: string): number {
  const row = database.prepare("SELECT entry_id FROM catalogue_current WHERE kind = 'adhesive' AND name = ?").get(name)
  return (row as { entry_id: number }).entry_id
}

test('the blocks of a study are found by it and by their age, that of their pull until they broke', () => {
  store()
  const { studyId } = pulledStudy(database)
  expect(found({ studyId })).toHaveLength(11)
  // Glued on 31 August 2030, broken in May 2031: eight months old
  expect(found({ studyId, ageLeastMonths: 8, ageMostMonths: 8 })).toHaveLength(3)
  expect(found({ studyId, ageLeastMonths: 12 })).toHaveLength(3)
  expect(listBreaks(database, listQuery.parse({ filter: { studyId } })).total).toBe(3)
})

test('breaks are filtered by what their specimens are made of', () => {
  store()
  for (const specimenId of [1, 2, 3, null]) storeBreak(database, specimenId)
  const breaks = (filter: Partial<ListFilter>) =>
    listBreaks(database, listQuery.parse({ filter, sort: 'number' })).rows.map(({ number }) => number)
  expect(breaks({ exposure: 'loft' })).toEqual(['A-1', 'A-2'])
  expect(breaks({})).toHaveLength(4)
})

test('an entry that nothing names gives an empty list', () => {
  store()
  addCatalogueEntry(database, { kind: 'exposure', name: 'soak', notes: '' }, morning, 'bench')
  expect(found({ exposure: 'soak' })).toEqual([])
})
