import { expect, test } from 'vitest'
import { observations } from '#archive/findings/observations.ts'
import { listBreaks } from '#archive/lists/lists.ts'
import { methods } from '#archive/methods.ts'
import {
  addCatalogueEntry,
  correctCatalogueEntry,
  entryVersions,
  mergeCatalogueEntries,
  takeBackCatalogueMerge,
} from '#archive/programme/catalogue.ts'
import { listSpecimens, specimen } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import { listQuery } from '#contract/listQuery.ts'
import { type CatalogueFields, catalogueFields } from '#contract/programme/catalogue.ts'
import { behindTheTriggers } from '../behindTheTriggers.ts'
import { archiveInMemory, morning, specimenFields, storeBreak } from '../storedStudy.ts'

const signed = { by: 'bench', reason: 'one bottle' }
const adhesive = (name: string): CatalogueFields => catalogueFields.parse({ kind: 'adhesive', name })

/** A block of casein C1 and one of casein-C1, both broken. */
function study() {
  const database = archiveInMemory()
  addSpecimens(database, [specimenFields('A-1'), specimenFields('A-2', { adhesive: 'casein-C1' })], morning, 'bench')
  storeBreak(database, 1)
  storeBreak(database, 2)
  return database
}

function entryOf(database: ReturnType<typeof study>, kind: string, name: string, nth = 0): number {
  const text = 'SELECT entry_id FROM catalogue_current WHERE kind = ? AND name = ? ORDER BY entry_id'
  return database.prepare<unknown[], number>(text).pluck().all(kind, name)[nth] as number
}

const adhesivesShown = (database: ReturnType<typeof study>) =>
  listBreaks(database, listQuery.parse({})).rows.map((row) => row.adhesive)
const faults = (database: ReturnType<typeof study>) => verify(database, () => {}).faults

test('a merge makes one group of two, shows one name, and rewrites nothing', () => {
  const database = study()
  const [from, into] = [entryOf(database, 'adhesive', 'casein-C1'), entryOf(database, 'adhesive', 'casein C1')]
  const written = database.prepare('SELECT * FROM specimen_revision').all()
  expect(methods.breakGroup(database, 1).breakIds).toEqual([1])
  mergeCatalogueEntries(database, from, into, morning, signed)
  expect(methods.breakGroup(database, 1).breakIds).toEqual([1, 2])
  expect(adhesivesShown(database)).toEqual(['casein C1', 'casein C1'])
  expect(observations(database, () => null).map((row) => row.adhesive)).toEqual(['casein C1', 'casein C1'])
  expect(database.prepare('SELECT * FROM specimen_revision').all()).toEqual(written)
  expect(specimen(database, 2).current.fields.adhesive).toBe('casein-C1')
  expect(faults(database)).toEqual([])
})

test('a merge that is taken back leaves two groups again', () => {
  const database = study()
  const [from, into] = [entryOf(database, 'adhesive', 'casein-C1'), entryOf(database, 'adhesive', 'casein C1')]
  mergeCatalogueEntries(database, from, into, morning, signed)
  takeBackCatalogueMerge(database, from, morning, { by: 'bench', reason: 'two bottles after all' })
  expect(methods.breakGroup(database, 2).breakIds).toEqual([2])
  expect(adhesivesShown(database)).toEqual(['casein C1', 'casein-C1'])
  expect(() => takeBackCatalogueMerge(database, from, morning, signed)).toThrow(/not merged/)
  expect(faults(database)).toEqual([])
})

test('the names before a correction go on naming the entry, and both are found', () => {
  const database = study()
  const entryId = entryOf(database, 'adhesive', 'casein C1')
  correctCatalogueEntry(database, entryId, adhesive('Casein, dry'), morning, signed)
  addSpecimens(database, [specimenFields('A-3')], morning, 'bench')
  expect(entryVersions(database, entryId).map(({ fields }) => fields.name)).toEqual(['casein C1', 'Casein, dry'])
  expect(adhesivesShown(database)[0]).toBe('Casein, dry')
  const found = (text: string) =>
    listSpecimens(database, listQuery.parse({ text })).rows.map(({ specimenId }) => specimenId)
  expect(found('dry')).toEqual([1, 3])
  expect(found('casein c1')).toEqual(expect.arrayContaining([1, 3]))
  expect(faults(database)).toEqual([])
})

test('a name is given once, also one that an entry had before', () => {
  const database = study()
  expect(() => addCatalogueEntry(database, adhesive('CASEIN C1'), morning, 'bench')).toThrow(/already/)
  const entryId = entryOf(database, 'adhesive', 'casein C1')
  correctCatalogueEntry(database, entryId, adhesive('Casein, dry'), morning, signed)
  expect(() => addCatalogueEntry(database, adhesive('casein C1'), morning, 'bench')).toThrow(/already/)
  expect(correctCatalogueEntry(database, entryId, adhesive('casein C1'), morning, signed).revision).toBe(3)
  const lot = (of: string) => catalogueFields.parse({ kind: 'lot', name: '7', adhesive: of })
  addCatalogueEntry(database, lot('casein C1'), morning, 'bench')
  addCatalogueEntry(database, lot('epoxy E4'), morning, 'bench')
  expect(() => addCatalogueEntry(database, lot('epoxy E4'), morning, 'bench')).toThrow(/already/)
  expect(entryOf(database, 'adhesive', 'epoxy E4')).toBeGreaterThan(0)
})

test('what cannot be one thing is not merged', () => {
  const database = study()
  const [from, into] = [entryOf(database, 'adhesive', 'casein-C1'), entryOf(database, 'adhesive', 'casein C1')]
  const merge = (a: number, b: number) => () => mergeCatalogueEntries(database, a, b, morning, signed)
  expect(merge(from, from)).toThrow(/counts as/)
  expect(merge(from, entryOf(database, 'place', 'shelf 2'))).toThrow(/two kinds/)
  expect(merge(from, 999)).toThrow(/no catalogue entry 999/)
  const lots = [0, 1].map((nth) => entryOf(database, 'lot', 'C1-2031-a', nth)) as [number, number]
  expect(merge(...lots)).toThrow(/two adhesives/)
  merge(from, into)()
  expect(merge(from, into)).toThrow(/merged already/)
  expect(merge(into, from)).toThrow(/counts as/)
  merge(...lots)()
  expect(faults(database)).toEqual([])
})

test('verify sees another hand in the names', () => {
  const database = study()
  behindTheTriggers(database, "UPDATE catalogue_current SET name = 'casein C2' WHERE name = 'casein C1'")
  expect(faults(database).map(({ where }) => where)).toEqual(['catalogue', 'specimen 1'])
})
