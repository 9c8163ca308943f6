import { expect, test } from 'vitest'
import { formatVersion, migrate, migrations } from '#archive/core/migrate.ts'
import { storeRecord } from '#archive/core/recordKind.ts'
import { inTransaction } from '#archive/core/transaction.ts'
import { blockKind, labelKind } from '#archive/programme/studyKinds.ts'
import { withdrawalKind } from '#archive/specimens/withdrawals.ts'
import { verify } from '#archive/verify/verify.ts'
import { expectAppendOnly } from '../../appendOnly.ts'
import { archiveInMemory, morning } from '../../storedStudy.ts'
import { everyRow, olderArchive } from '../olderArchive.ts'

const later = '2032-01-01T00:00:00.000Z'

test.each([3, 4] as const)('leaves every record of format %i as it was, and the chain whole', (version) => {
  const before = olderArchive(version)
  migrate(before, migrations.slice(0, 5), 'newer', later)
  const database = olderArchive(version)
  migrate(database, migrations.slice(0, 5), 'newer', later)
  migrate(database, migrations.slice(0, 6), 'newer', later)
  expect(formatVersion(database)).toBe(6)
  const [now, was] = [everyRow(database), everyRow(before)]
  for (const [table, rows] of Object.entries(was))
    expect(now[table]!.slice(0, rows.length), table).toMatchObject(rows as object[])
  migrate(database, migrations, 'newer', later)
  expect(verify(database, () => {}).faults).toEqual([])
})

test('never changes a block, a label or a withdrawal', () => {
  const database = archiveInMemory()
  const signed = { recordedAt: morning, by: 'Ada Thole' }
  inTransaction(database, () => {
    storeRecord(database, blockKind, {
      ...signed,
      studyId: 1,
      running: 1,
      adhesive: 'casein C1',
      jointType: '',
      gapMm: 0,
      exposure: 'loft',
      ageMonths: null,
      board: '',
      breakingOrder: 0,
    })
    storeRecord(database, labelKind, { ...signed, running: 2, specimenId: 1 })
    storeRecord(database, withdrawalKind, { ...signed, reason: 'eaten by mice', specimenId: 1, kind: 'withdrawn' })
  })
  expectAppendOnly(database, 'block', 'block_id')
  expectAppendOnly(database, 'label', 'running')
  expectAppendOnly(database, 'withdrawal', 'withdrawal_id')
})
