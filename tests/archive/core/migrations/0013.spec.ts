import { expect, test } from 'vitest'
import { formatVersion, migrate, migrations } from '#archive/core/migrate.ts'
import { openHere } from '#archive/openHere.ts'
import { verify } from '#archive/verify/verify.ts'
import { temporaryFolder } from '../../storedStudy.ts'
import { everyRow, olderArchive } from '../olderArchive.ts'

const later = '2032-01-01T00:00:00.000Z'

test('leaves every record as it was, and makes room in the lists alone', () => {
  const before = olderArchive(5)
  migrate(before, migrations.slice(0, 12), 'newer', later)
  const database = olderArchive(5)
  migrate(database, migrations.slice(0, 12), 'newer', later)
  migrate(database, migrations.slice(0, 13), 'newer', later)
  expect(formatVersion(database)).toBe(13)
  const [now, was] = [everyRow(database), everyRow(before)]
  for (const [table, rows] of Object.entries(was))
    expect(now[table]!.slice(0, rows.length), table).toMatchObject(rows as object[])
})

test('lets every specimen be found by its figures once the archive is opened', () => {
  const path = `${temporaryFolder()}/study.breakledger`
  olderArchive(5, path).close()
  const { database, close } = openHere({ path, mode: 'write', program: 'newer', instant: later })
  const figures = database.prepare('SELECT figures FROM specimen_current').pluck().all()
  expect(figures).not.toEqual([])
  for (const text of figures) expect(text).toContain('\n')
  expect(verify(database, () => {}).faults).toEqual([])
  close()
})
