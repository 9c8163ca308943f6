import { expect, test } from 'vitest'
import { formatVersion, migrate, migrations } from '#archive/core/migrate.ts'
import { everyRow, olderArchive } from '../olderArchive.ts'

const later = '2032-01-01T00:00:00.000Z'

test('leaves every record as it was, and makes room for corrections of glue-ups, which stay as they are', () => {
  const before = olderArchive(5)
  migrate(before, migrations.slice(0, 13), 'newer', later)
  const database = olderArchive(5)
  migrate(database, migrations.slice(0, 13), 'newer', later)
  migrate(database, migrations.slice(0, 14), 'newer', later)
  expect(formatVersion(database)).toBe(14)
  const [now, was] = [everyRow(database), everyRow(before)]
  for (const [table, rows] of Object.entries(was))
    expect(now[table]!.slice(0, rows.length), table).toMatchObject(rows as object[])
  database.exec(`INSERT INTO glue_up VALUES (1, '${later}', 'bench', NULL, '{}');
    INSERT INTO glue_up_correction VALUES (1, '${later}', 'bench', 'misread', 1, '{}')`)
  for (const change of ["UPDATE glue_up_correction SET reason = 'x'", 'DELETE FROM glue_up_correction'])
    expect(() => database.exec(change)).toThrow(/never/)
})
