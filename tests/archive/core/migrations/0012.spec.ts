import { expect, test } from 'vitest'
import { formatVersion, migrate, migrations } from '#archive/core/migrate.ts'
import { everyRow, olderArchive } from '../olderArchive.ts'

const later = '2032-01-01T00:00:00.000Z'

test('leaves every record as it was, and makes room for why a result without a curve is set aside', () => {
  const before = olderArchive(5)
  migrate(before, migrations.slice(0, 11), 'newer', later)
  const database = olderArchive(5)
  migrate(database, migrations.slice(0, 11), 'newer', later)
  migrate(database, migrations.slice(0, 12), 'newer', later)
  expect(formatVersion(database)).toBe(12)
  const [now, was] = [everyRow(database), everyRow(before)]
  for (const [table, rows] of Object.entries(was))
    expect(now[table]!.slice(0, rows.length), table).toMatchObject(rows as object[])
  const columns = database.pragma('table_info(typed_result_decision)') as { name: string }[]
  expect(columns.map(({ name }) => name)).toContain('cause')
})
