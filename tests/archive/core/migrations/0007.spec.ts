import { expect, test } from 'vitest'
import { migrate, migrations } from '#archive/core/migrate.ts'
import { rebuildDerived } from '#archive/lists/rebuild.ts'
import { verify } from '#archive/verify/verify.ts'
import { everyRow, olderArchive } from '../olderArchive.ts'

const later = '2032-01-01T00:00:00.000Z'

function migrated(version: 1 | 2 | 3 | 4 | 5) {
  const database = olderArchive(version)
  migrate(database, migrations.slice(0, 7), 'newer', later)
  return database
}

type Entered = { kind: string; name: string; adhesive?: string }

function entries(database: ReturnType<typeof migrated>): Entered[] {
  const texts = database.prepare('SELECT fields FROM catalogue_revision ORDER BY revision_id').pluck().all()
  return texts.map((text) => JSON.parse(String(text)))
}

test.each([1, 2, 3, 4, 5] as const)('leaves every record and every hash of format %i as it was', (version) => {
  const before = olderArchive(version)
  migrate(before, migrations.slice(0, 6), 'newer', later)
  const database = migrated(version)
  const [now, was] = [everyRow(database), everyRow(before)]
  // The format itself is entered last, after the names
  for (const [table, rows] of Object.entries(was))
    if (!['ledger', 'format_history', 'catalogue_revision'].includes(table))
      expect(now[table], table).toMatchObject(rows as object[])
  const atFirst = everyRow(olderArchive(version)).ledger!
  expect(now.ledger!.slice(0, atFirst.length)).toEqual(atFirst)
  migrate(database, migrations, 'newer', later)
  rebuildDerived(
    database,
    () => {},
    () => false,
  )
  expect(verify(database, () => {}).faults).toEqual([])
})

test('gives every name in free text one entry, however it was written', () => {
  const names = (kind: string) => entries(migrated(5)).flatMap((entry) => (entry.kind === kind ? [entry.name] : []))
  expect(names('adhesive')).toEqual([
    ...['casein C1', 'épôxy E4', 'resorcinol R2', 'one-part polyurethane U3'],
    ...['casein-C1', 'epoxi E4', 'cross-linking PVA V5', 'PVA V5'],
  ])
  expect(names('exposure')).toEqual(['loft', 'bilge'])
  expect(names('operator')).toEqual(['bench', 'second bench'])
  expect(names('place')).toEqual([...['shelf 2', 'loft, left\nlower "shelf"', `${'x'.repeat(199)}y`, 'shelf 3']])
})

test('keeps lots of two adhesives apart that are called the same', () => {
  const lots = entries(migrated(5)).filter(({ kind }) => kind === 'lot')
  expect(lots.map(({ name, adhesive }) => `${name} of ${adhesive}`)).toEqual([
    'C1-2031-a of casein C1',
    'C1-2031-a of resorcinol R2',
    'C1-2031-a of one-part polyurethane U3',
    'c1-2031-A of casein-C1',
    'C1-2031-a of epoxy E4',
    'bottle 7 of cross-linking PVA V5',
    'bottle 7 of PVA V5',
  ])
})

test('leaves a text alone that is longer than a name may be', () => {
  const database = olderArchive(5)
  database
    .prepare(
      `INSERT INTO specimen_revision SELECT 99, 99, 1, recorded_at, by, '', 'X-1', ?, lot, joint_type, exposure,
       bond_line_gap_mm, overlap_length_mm, overlap_width_mm, area_mm2, glued_on, place, notes, demo
       FROM specimen_revision WHERE revision_id = 1`,
    )
    .run('y'.repeat(201))
  const before = entries(migrated(5)).length
  migrate(database, migrations.slice(0, 7), 'newer', later)
  expect(entries(database)).toHaveLength(before)
})
