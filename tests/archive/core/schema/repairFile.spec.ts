import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { repairFile } from '#archive/core/schema/repairFile.ts'
import { openHere } from '#archive/openHere.ts'
import { addSpecimen } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import { morning, specimenFields, storeBreak, temporaryFolder } from '../../storedStudy.ts'

const open = (path: string) => {
  const archive = openHere({ path, mode: 'write', program: 'breakledger test', instant: morning })
  onTestFinished(() => archive.close())
  return archive
}

function study(): string {
  const path = join(temporaryFolder(), 'study.breakledger')
  const { database, close } = open(path)
  addSpecimen(database, specimenFields('C1-LL-1'), morning, 'bench')
  storeBreak(database, 1)
  close()
  return path
}

/** The archive opens for writing, takes a specimen as it was typed, and is sound. */
function isWhole(path: string): void {
  const { database, close } = open(path)
  addSpecimen(database, specimenFields('C1-LL-2', { areaMm2: 600 }), morning, 'bench')
  expect(database.prepare('SELECT area_mm2 FROM specimen_revision ORDER BY revision_id DESC').pluck().get()).toBe(600)
  expect(verify(database, () => {}).faults).toEqual([])
  close()
}

test.each([
  ['triggers that are gone', 'DROP TRIGGER ledger_is_never_changed; DROP TRIGGER evaluation_is_never_removed', 2],
  [
    'a planted trigger',
    `CREATE TRIGGER larger BEFORE INSERT ON specimen_current
     BEGIN UPDATE specimen_current SET area_mm2 = area_mm2 * 1.1; END`,
    1,
  ],
  ['a planted view and index', 'CREATE VIEW shelf AS SELECT 1; CREATE INDEX "pea""ks" ON evaluation (peak_n)', 2],
  ['an index that is gone', 'DROP INDEX evaluation_of_break', 1],
])('mends %s, after a copy', (_name, text, differences) => {
  const path = study()
  new Database(path).exec(text).close()
  const before = readFileSync(path)
  const { copy, mended, left } = repairFile(path, morning)
  expect([mended.length, left]).toEqual([differences, []])
  expect(copy).toBe(join(path, '..', 'study-before-repair-2031-05-02T093000Z.breakledger'))
  expect(readFileSync(copy!)).toEqual(before)
  isWhole(path)
})

test.each(['BEGIN SELECT RAISE', 'INDEX evaluation_of_break ON'])('mends one flipped bit in the text "%s"', (text) => {
  const path = study()
  const bytes = readFileSync(path)
  for (let at = bytes.indexOf(text); at >= 0; at = bytes.indexOf(text, at + 1)) bytes[at]! ^= 1
  writeFileSync(path, bytes)
  repairFile(path, morning)
  isWhole(path)
})

test('mends the condition of a table whose text is damaged', () => {
  const path = study()
  const bytes = readFileSync(path)
  const text = "'decimal', 'float64'"
  for (let at = bytes.indexOf(text); at >= 0; at = bytes.indexOf(text, at + 1)) bytes[at + 3]! ^= 1
  writeFileSync(path, bytes)
  expect(repairFile(path, morning).mended).toEqual(['table climate_block', 'table curve_block', 'table running_block'])
  isWhole(path)
})

test.each([
  ['type of a table', "type = 'tabla'", 'evaluation'],
  ['type of a table that became bytes', 'type = CAST(type AS BLOB)', 'evaluation'],
  ['name of a table', "name = 'evaluatioo'", 'evaluation'],
  ['table of an index', "tbl_name = 'evaluatioo'", 'evaluation_of_break'],
  ['type of a trigger', "type = 'tri ger'", 'evaluation_is_never_changed'],
])('mends the damaged %s, and keeps its rows', (_name, change, of) => {
  const path = study()
  const database = new Database(path).unsafeMode(true)
  database.pragma('writable_schema = ON')
  database.exec(`UPDATE sqlite_schema SET ${change} WHERE name = '${of}'`)
  database.close()
  expect(repairFile(path, morning).left).toEqual([])
  isWhole(path)
})

test('keeps a copy of its own for each repair of one second', () => {
  const path = study()
  const copies = ['ledger_is_never_changed', 'evaluation_is_never_removed'].map((trigger) => {
    new Database(path).exec(`DROP TRIGGER ${trigger}`).close()
    return repairFile(path, morning).copy
  })
  expect(copies).toEqual(
    ['', '-2'].map((count) => join(path, '..', `study-before-repair-2031-05-02T093000Z${count}.breakledger`)),
  )
})

test('leaves a sound archive as it is, without a copy', () => {
  const path = study()
  const before = readFileSync(path)
  expect(repairFile(path, morning)).toEqual({ copy: null, mended: [], left: [] })
  expect(readFileSync(path)).toEqual(before)
  expect(readdirSync(join(path, '..')).filter((name) => name.includes('repair'))).toEqual([])
})

test('leaves a table that is not ours, and says so', () => {
  const path = study()
  new Database(path).exec('CREATE TABLE shelf (id INTEGER); DROP TRIGGER ledger_is_never_changed').close()
  expect(repairFile(path, morning)).toMatchObject({
    mended: ['trigger ledger_is_never_changed'],
    left: ['table shelf'],
  })
})

test('brings what lies in the journal of a program that died into the copy and the archive', () => {
  const path = study()
  const { database } = open(path)
  addSpecimen(database, specimenFields('C1-LL-7'), morning, 'bench')
  const dead = join(temporaryFolder(), 'dead.breakledger')
  for (const ending of ['', '-wal']) writeFileSync(dead + ending, readFileSync(path + ending))
  const bytes = readFileSync(dead)
  for (let at = bytes.indexOf('BEGIN SELECT RAISE'); at >= 0; at = bytes.indexOf('BEGIN SELECT RAISE', at + 1))
    bytes[at]! ^= 1
  writeFileSync(dead, bytes)
  const { copy } = repairFile(dead, morning)
  expect(new Database(dead).prepare('SELECT count(*) FROM specimen_revision').pluck().get()).toBe(2)
  expect(existsSync(copy!)).toBe(true)
  isWhole(dead)
})

test('refuses what is no archive, and an archive that is open', () => {
  const path = study()
  const other = join(path, '..', 'other')
  new Database(other).exec('CREATE TABLE shelf (id INTEGER)').close()
  expect(() => repairFile(other, morning)).toThrow(
    expect.objectContaining({ message: expect.stringMatching(/not an archive/) }),
  )
  expect(() => repairFile(`${other}-none`, morning)).toThrow(expect.objectContaining({ code: 'archive-missing' }))
  open(path)
  expect(() => repairFile(path, morning)).toThrow(expect.objectContaining({ code: 'archive-in-use' }))
})
