import { expect, test } from 'vitest'
import { deriveCatalogue } from '#archive/catalogue/deriveCatalogue.ts'
import { nameReader } from '#archive/catalogue/names.ts'
import { nameNew } from '#archive/catalogue/newNames.ts'
import { addSpecimens, correctSpecimen } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import { archiveInMemory, morning, specimenFields } from '../storedStudy.ts'

const rows = (database: ReturnType<typeof archiveInMemory>, text: string) => database.prepare(text).raw().all()

const entered = (database: ReturnType<typeof archiveInMemory>) =>
  rows(database, 'SELECT kind, name FROM catalogue_current ORDER BY entry_id').map((row) =>
    (row as unknown[]).join(': '),
  )

test('what a specimen names is in the catalogue once it is stored, each name once', () => {
  const database = archiveInMemory()
  addSpecimens(
    database,
    ['casein C1', 'Casein  C01'].map((adhesive, i) => specimenFields(`A-${i}`, { adhesive, wood: '' })),
    morning,
    'bench',
  )
  expect(entered(database)).toEqual([
    'operator: bench',
    'adhesive: casein C1',
    'lot: C1-2031-a',
    'joint-type: long grain to long grain',
    'exposure: loft',
    'place: shelf 2',
  ])
  correctSpecimen(database, 1, specimenFields('A-0', { wood: 'beech', board: 'B3' }), morning, 'bench', 'sawn from B3')
  expect(entered(database).slice(6)).toEqual(['wood: beech', 'board: B3'])
  expect(verify(database, () => {}).faults).toEqual([])
})

test('nothing is entered where the specimens are refused', () => {
  const database = archiveInMemory()
  expect(() => addSpecimens(database, [specimenFields('A-1'), specimenFields('A-1')], morning, 'bench')).toThrow()
  expect(entered(database)).toEqual([])
})

test('names that are added one by one give the rows that all records give', () => {
  const database = archiveInMemory()
  nameNew(
    database,
    [
      { kind: 'lot', name: '7', of: 'epoxy E4' },
      { kind: 'lot', name: '7', of: 'casein C1' },
      { kind: 'board', name: 'B3', of: '' },
      { kind: 'board', name: 'B3', of: 'beech' },
      { kind: 'place', name: '', of: '' },
      { kind: 'adhesive', name: 'Époxy e04', of: '' },
    ],
    morning,
    'bench',
  )
  const { current, names } = deriveCatalogue(database)
  expect(database.prepare('SELECT * FROM catalogue_current ORDER BY entry_id').all()).toEqual(current)
  expect(database.prepare('SELECT * FROM catalogue_name').all()).toHaveLength(names.length)
  expect(current.map(({ kind, name }) => `${kind}: ${name}`)).toEqual([
    ...['adhesive: epoxy E4', 'lot: 7', 'adhesive: casein C1', 'lot: 7', 'board: B3', 'wood: beech', 'board: B3'],
  ])
  const read = nameReader(database)
  expect(read({ kind: 'lot', name: '7', of: 'EPOXY E4' })).toEqual({ entryId: 2, name: '7' })
  expect(read({ kind: 'lot', name: '7', of: 'casein C1' })).toEqual({ entryId: 4, name: '7' })
  expect(read({ kind: 'lot', name: '7', of: '' })).toBeNull()
  expect(read({ kind: 'wood', name: '', of: '' })).toBeNull()
})
