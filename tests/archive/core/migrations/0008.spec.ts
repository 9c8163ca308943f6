import { expect, test } from 'vitest'
import { formatVersion, migrate, migrations } from '#archive/core/migrate.ts'
import { everyRow, olderArchive } from '../olderArchive.ts'

const later = '2032-01-01T00:00:00.000Z'

test('leaves every record as it was, and makes room for results without a curve in the lists', () => {
  const before = olderArchive(4)
  migrate(before, migrations.slice(0, 7), 'newer', later)
  const database = olderArchive(4)
  migrate(database, migrations.slice(0, 7), 'newer', later)
  migrate(database, migrations.slice(0, 8), 'newer', later)
  expect(formatVersion(database)).toBe(8)
  const [now, was] = [everyRow(database), everyRow(before)]
  for (const [table, rows] of Object.entries(was))
    expect(now[table]!.slice(0, rows.length), table).toMatchObject(rows as object[])
})
