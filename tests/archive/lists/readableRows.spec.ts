import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { listBreaks } from '#archive/lists/lists.ts'
import { readableRows } from '#archive/lists/readableRows.ts'
import { listSpecimens } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import { listQuery } from '#contract/listQuery.ts'
import { specimenProcedures } from '#contract/specimens/procedures.ts'
import { archiveInMemory, morning, specimenFields, storeBreak } from '../storedStudy.ts'

const all = listQuery.parse({})

/** Three specimens, the second of them broken, and two breaks more. */
function study(): Database.Database {
  const database = archiveInMemory()
  const numbers = ['C1-LL-1', 'C1-LL-2', 'C1-LL-3']
  addSpecimens(
    database,
    numbers.map((number) => specimenFields(number)),
    morning,
    'bench',
  )
  for (const specimenId of [null, 2, null]) storeBreak(database, specimenId)
  return database
}

function plant(database: Database.Database, table: string, text: string): void {
  database.exec(`DROP TRIGGER ${table}_is_never_changed; PRAGMA ignore_check_constraints = ON; ${text}`)
}

test('a specimen that is not as it should be hides no other, and is named with what is wrong', () => {
  const database = study()
  plant(database, 'specimen_revision', 'UPDATE specimen_revision SET area_mm2 = -600 WHERE specimen_id = 2')
  const { total, rows, unreadable } = listSpecimens(database, all)
  expect(total).toBe(3)
  expect(rows.map(({ fields }) => fields.number)).toEqual(['C1-LL-1', 'C1-LL-3'])
  expect(unreadable).toEqual([{ record: 'specimen 2', because: expect.stringMatching(/area/) }])
})

test.each([
  ['is no JSON', "UPDATE evaluation SET flags = '[' WHERE break_id = 2"],
  ['knows no such word', `UPDATE evaluation SET flags = '["bent"]' WHERE break_id = 2`],
  ['names a calibration that is not there', `UPDATE evaluation SET scale = '{"kind":"calibration","calibrationId":7}'`],
])('a break whose result %s hides no other', (_name, text) => {
  const database = study()
  plant(database, 'evaluation', `${text.includes('WHERE') ? text : `${text} WHERE break_id = 2`}`)
  const { rows, unreadable } = listBreaks(database, listQuery.parse({ sort: 'startedAt' }))
  expect(rows.map(({ breakId }) => breakId)).toEqual([1, 3])
  expect(unreadable?.map(({ record }) => record)).toEqual(['break 2'])
})

test('verify finds a record that the chain holds just so, but that cannot be read', () => {
  const database = study()
  plant(database, 'specimen_revision', 'UPDATE specimen_revision SET area_mm2 = -600 WHERE specimen_id = 2')
  database.exec(`DROP TRIGGER ledger_is_never_changed;
    UPDATE ledger SET content = json_set(content, '$.fields.areaMm2', -600) WHERE kind = 'specimen' AND record_id = 2`)
  expect(verify(database, () => {}).faults).toContainEqual({
    where: 'ledger entry 3 (specimen 2)',
    what: expect.stringMatching(/cannot be read: .*areaMm2/),
  })
})

test('whoever added a specimen may have a longer name than can be typed now, from an older program', () => {
  const database = study()
  addSpecimens(database, [specimenFields('C1-LL-4')], morning, 'x'.repeat(5000))
  const page = listSpecimens(database, all)
  expect(page.unreadable).toBeUndefined()
  expect(specimenProcedures['specimens.list'].output.parse(page).rows).toHaveLength(4)
})

test('a bonded area so small that the strength is beyond every number leaves the list readable', () => {
  const database = study()
  addSpecimens(database, [specimenFields('C1-LL-4', { areaMm2: 5e-324 })], morning, 'bench')
  storeBreak(database, 4)
  const { rows, unreadable } = listBreaks(database, listQuery.parse({ sort: 'startedAt' }))
  expect(unreadable).toBeUndefined()
  expect(rows.at(-1)).toMatchObject({ number: 'C1-LL-4', strengthMPa: null })
})

test('what is no damage is thrown', () => {
  const fails = () => {
    throw new TypeError('a fault of the program')
  }
  expect(() => readableRows('specimen', [1], fails, { parse: String })).toThrow(TypeError)
})
