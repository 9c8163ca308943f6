import { expect, test } from 'vitest'
import { formatVersion, migrate, migrations } from '#archive/core/migrate.ts'
import { everyRow, olderArchive } from '../olderArchive.ts'

const later = '2032-01-01T00:00:00.000Z'

test('leaves every record as it was, and makes room for findings that are kept', () => {
  const before = olderArchive(5)
  migrate(before, migrations.slice(0, 10), 'newer', later)
  const database = olderArchive(5)
  migrate(database, migrations.slice(0, 10), 'newer', later)
  migrate(database, migrations.slice(0, 11), 'newer', later)
  expect(formatVersion(database)).toBe(11)
  const [now, was] = [everyRow(database), everyRow(before)]
  for (const [table, rows] of Object.entries(was))
    expect(now[table]!.slice(0, rows.length), table).toMatchObject(rows as object[])
  expect(now['kept_finding_revision']).toEqual([])
})
