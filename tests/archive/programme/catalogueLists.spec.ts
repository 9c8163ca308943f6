import { expect, test } from 'vitest'
import { storeReadings } from '#archive/findings/climate/storeReadings.ts'
import { mergeCatalogueEntries } from '#archive/programme/catalogue.ts'
import { catalogueChoices, catalogueCounts, catalogueList, catalogueRecord } from '#archive/programme/catalogueLists.ts'
import { previewMerge } from '#archive/programme/catalogueUses.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { catalogueRecord as recordSchema } from '#contract/programme/catalogueProcedures.ts'
import { madeReadings } from '../findings/climate/madeReadings.ts'
import { archiveInMemory, morning, specimenFields } from '../storedStudy.ts'

/** Three blocks of casein C1 and two of casein-C1, one of these in the bilge. */
function study() {
  const database = archiveInMemory()
  const made = [{}, {}, {}, { adhesive: 'casein-C1' }, { adhesive: 'casein-C1', exposure: 'bilge' }]
  addSpecimens(
    database,
    made.map((change, i) => specimenFields(`A-${i}`, change)),
    morning,
    'bench',
  )
  const idOf = (name: string) =>
    Number(database.prepare('SELECT entry_id FROM catalogue_current WHERE name = ?').pluck().get(name))
  return { database, from: idOf('casein-C1'), into: idOf('casein C1') }
}

test('lists a kind with how many specimens name each entry, and what may be one thing', () => {
  const { database, from, into } = study()
  const { rows, alike } = catalogueList(database, 'adhesive')
  expect(rows.map(({ fields, specimens }) => [fields.name, specimens])).toEqual([
    ['casein C1', 3],
    ['casein-C1', 2],
  ])
  expect(alike).toEqual([{ entryId: into, otherId: from, differ: 'case' }])
  expect(catalogueList(database, 'operator').rows).toMatchObject([{ fields: { name: 'bench' }, specimens: null }])
  // Two lots of that name, one of each adhesive, are two things
  expect(catalogueList(database, 'lot')).toMatchObject({ rows: [{ specimens: 3 }, { specimens: 2 }], alike: [] })
})

test('holds lots of one adhesive against each other, in whatever case its name was written with each', () => {
  const database = archiveInMemory()
  const fields = [{ lot: 'C1-lot-2' }, { adhesive: 'Casein C1', lot: 'C1 lot 2' }]
  addSpecimens(
    database,
    fields.map((change, i) => specimenFields(`A-${i}`, change)),
    morning,
    'bench',
  )
  expect(catalogueList(database, 'lot').alike).toMatchObject([{ differ: 'case' }])
})

test('says before a merge which groups become one', () => {
  const { database, from, into } = study()
  expect(previewMerge(database, from, into)).toEqual({
    ...{ fromEntryId: from, intoEntryId: into, fromSpecimens: 2, intoSpecimens: 3 },
    groups: [
      {
        ...{ adhesive: 'casein C1', jointType: 'long grain to long grain', bondLineGapMm: 0, exposure: 'loft' },
        ...{ fromSpecimens: 1, intoSpecimens: 3 },
      },
    ],
  })
  expect(() => previewMerge(database, from, from)).toThrow(/counts as/)
})

test('offers what was merged no more, and shows it with what it became', () => {
  const { database, from, into } = study()
  mergeCatalogueEntries(database, from, into, morning, { by: 'bench', reason: 'one bottle' })
  expect(catalogueChoices(database, 'adhesive').map(({ entryId }) => entryId)).toEqual([into])
  expect(catalogueCounts(database)[0]).toEqual({ kind: 'adhesive', entries: 1, alike: 0 })
  const became = catalogueRecord(database, into)
  expect(recordSchema.parse(became)).toEqual(became)
  expect(became).toMatchObject({ specimens: 5, merged: [{ entryId: from, name: 'casein-C1' }] })
  expect(became.parts).toHaveLength(2)
  expect(became.decisions).toMatchObject([{ kind: 'merged', reason: 'one bottle', fromEntryId: from }])
  expect(catalogueRecord(database, from)).toMatchObject({ intoEntryId: into, specimens: 0 })
})

test('names the files of loggers that hung in an exposure, under whichever name', () => {
  const { database } = study()
  for (const hours of [[0], [1]])
    storeReadings(
      database,
      () => {},
      () => false,
      madeReadings(hours),
    )
  const [bilge, loft] = catalogueList(database, 'exposure').rows
  expect(catalogueRecord(database, bilge!.entryId).loggerFiles).toEqual([])
  expect(catalogueRecord(database, loft!.entryId).loggerFiles).toEqual(['loft.csv'])
  mergeCatalogueEntries(database, loft!.entryId, bilge!.entryId, morning, { by: 'bench', reason: 'one shed' })
  expect(catalogueRecord(database, bilge!.entryId).loggerFiles).toEqual(['loft.csv'])
})
