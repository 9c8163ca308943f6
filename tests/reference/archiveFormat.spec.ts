import { execFileSync, spawnSync } from 'node:child_process'
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { addDecision } from '#archive/decisions.ts'
import { migrations } from '#archive/migrate.ts'
import { openDatabase } from '#archive/openDatabase.ts'
import { addSpecimens, correctSpecimen } from '#archive/specimens.ts'
import type { SampleBlock } from '#contract/records/break.ts'
import { rows as calibrationRows, storeCalibrations } from '../archive/storedCalibration.ts'
import { morning, rampAndFall, specimenFields, storeBreak, temporaryFolder } from '../archive/storedStudy.ts'

// Reads an archive as a stranger would: by the texts of FORMAT.md and nothing of ours.

const documentText = readFileSync(join(import.meta.dirname, '../../electron/archive/FORMAT.md'), 'utf8')

/** The text of the fenced block with that language and name. */
function fenced(language: string, name: string): string {
  const found = new RegExp(`^\`\`\`${language} ${name}\\n([\\s\\S]*?)^\`\`\`$`, 'm').exec(documentText)
  if (found?.[1] === undefined) throw new Error(`FORMAT.md has no block "${language} ${name}"`)
  return found[1]
}

const shellIsThere =
  spawnSync('sqlite3', ['-version']).status === 0 && spawnSync('sha256sum', ['--version']).status === 0

// Park and Miller's generator (1988, multiplier 48271), so that every run sees the same samples.
function noisy(samples: number, seed: number, decimals: number, jitterUs: number): SampleBlock {
  let state = seed
  const random = () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
  const timeUs = Float64Array.from({ length: samples }, (_, i) => Math.round(i * 999.63 + jitterUs * random()))
  const readings = Float64Array.from({ length: samples }, (_, i) => {
    const load = i < samples * 0.9 ? i * 40 : -7
    // Adding 0 makes minus zero zero, as it is kept.
    return Math.round((load + 900 * random() - 450) * 10 ** decimals) / 10 ** decimals + 0
  })
  return { timeUs, readings }
}

const curves: readonly SampleBlock[] = [
  rampAndFall(500, 600_000),
  noisy(70_000, 1, 0, 0),
  noisy(3000, 2, 3, 600),
  // Differences that need more than 32 bits, a single sample, and numbers right at the edge of a group.
  { timeUs: Float64Array.of(3, 4e9, 4e9 + 1), readings: Float64Array.of(9e14, -9e14, 12_345) },
  { timeUs: Float64Array.of(0), readings: Float64Array.of(-0.125) },
  noisy(65, 3, 1, 5),
  noisy(66, 4, 6, 5),
]
const doubles = Float64Array.of(
  Math.PI,
  -1e-300,
  1.7976931348623157e308,
  5e-324,
  -2.2250738585072014e-308,
  0,
  0.1 + 0.2,
)

function writtenArchive(): string {
  const path = join(temporaryFolder(), 'study.breakledger')
  const archive = openDatabase({ path, mode: 'write', program: 'breakledger test', instant: morning })
  const { database } = archive
  const list = ['C1-LL-1', 'C1-LL-2', 'C1-LL-3'].map((number) => specimenFields(number))
  addSpecimens(database, list, morning, 'bench')
  curves.forEach((curve, i) => {
    storeBreak(database, i < 3 ? i + 1 : null, curve, { peakN: 6000 + i })
  })
  const timeUs = Float64Array.from(doubles, (_, i) => i * 1000)
  storeBreak(database, null, { timeUs, readings: doubles }, { outcome: 'unloading', peakN: null, peakTimeS: null })
  correctSpecimen(database, 1, specimenFields('C1-LL-1', { areaMm2: 500 }), morning, 'bench', 'line 1\nline 2 | ü')
  const decision = { recordedAt: morning, by: 'bench', reason: 'slipped', specimenId: null }
  addDecision(database, { ...decision, breakId: 2, kind: 'set-aside' })
  addDecision(database, { ...decision, breakId: 4, kind: 'reassigned', specimenId: 3 })
  storeCalibrations(database)
  archive.close()
  return path
}

test('reads every curve by the query of the document', () => {
  const stranger = new Database(writtenArchive(), { readonly: true })
  curves.forEach((curve, i) => {
    const text = fenced('sql', 'curve').replace('break_id = 1', `break_id = ${i + 1}`)
    const rows = stranger.prepare<[], { time_us: number; reading: number | string }>(text).all()
    expect(rows.length).toBe(curve.timeUs.length)
    expect(Float64Array.from(rows, (row) => row.time_us)).toEqual(curve.timeUs)
    expect(Float64Array.from(rows, (row) => Number(row.reading))).toEqual(curve.readings)
  })
  stranger.close()
})

test('reads doubles by the query of the document, bit by bit', () => {
  const stranger = new Database(writtenArchive(), { readonly: true })
  const text = fenced('sql', 'doubles').replace('break_id = 1', `break_id = ${curves.length + 1}`)
  const rows = stranger.prepare<[], { sample: number; reading: number }>(text).all()
  expect(rows.map((row) => row.sample)).toEqual(Array.from(doubles, (_, i) => i))
  expect(Float64Array.from(rows, (row) => row.reading)).toEqual(doubles)
  stranger.close()
})

test('reads the results by the query of the document', () => {
  const stranger = new Database(writtenArchive(), { readonly: true })
  const rows = stranger.prepare(fenced('sql', 'results')).all()
  // Break 1: 6000 N over the corrected 500 mm2. Break 2 is set aside; break 4 went to specimen 3; break 8 is no break.
  expect(rows).toMatchObject([
    { break_id: 1, number: 'C1-LL-1', peak_n: 6000, strength_mpa: 12 },
    { break_id: 3, number: 'C1-LL-3', peak_n: 6002, area_mm2: 600 },
    { break_id: 4, number: 'C1-LL-3', peak_n: 6003 },
    { break_id: 5, number: null, strength_mpa: null },
    { break_id: 6 },
    { break_id: 7 },
  ])
  stranger.close()
})

test('holds the worked example of the curve coding', () => {
  const stranger = new Database(':memory:')
  stranger.exec(`CREATE TABLE curve_block AS SELECT 1 AS break_id, 0 AS block, 5 AS samples, 0 AS first_us,
    12500 AS interval_us, x'02E0' AS times, 'decimal' AS reading_coding, 0 AS decimals, 1 AS differences,
    -12 AS first_mantissa, 0 AS first_step, x'0B0610C300080F' AS readings`)
  const rows = stranger.prepare(fenced('sql', 'curve')).raw().all()
  expect(rows).toEqual([
    [0, -12],
    [12_500, -9],
    [25_000, 40],
    [37_501, 38],
    [50_000, 1000],
  ])
  for (const part of ['`times` = `02E0`', '`readings` = `0B0610C300080F`']) expect(documentText).toContain(part)
  stranger.close()
})

test.runIf(shellIsThere)('checks a curve with sqlite3 and sha256sum alone', () => {
  const path = writtenArchive()
  const folder = temporaryFolder()
  for (let breakId = 1; breakId <= curves.length; breakId++) {
    const here = (text: string) => text.replace('break_id = 1', `break_id = ${breakId}`)
    writeFileSync(join(folder, 'curve.sql'), here(fenced('sql', 'curve')))
    const printed = execFileSync('sh', ['-c', here(fenced('sh', 'curve-check'))], {
      cwd: folder,
      env: { ...process.env, ARCHIVE: path },
      encoding: 'utf8',
    })
    const [computed, recorded] = printed.trim().split('\n')
    expect(computed).toBe(`${recorded}  -`)
    expect(recorded).toMatch(/^[0-9a-f]{64}$/)
  }
})

test.runIf(shellIsThere)('checks the chain with sqlite3 and sha256sum alone, and sees where it is broken', () => {
  const path = writtenArchive()
  const check = (archive: string) =>
    execFileSync('sh', ['-c', fenced('sh', 'chain-check')], {
      env: { ...process.env, ARCHIVE: archive },
      encoding: 'utf8',
    })
  expect(check(path)).toBe('')
  const harm = (text: string) => {
    const copy = `${path}-copy`
    copyFileSync(path, copy)
    const database = new Database(copy)
    database.exec(`DROP TRIGGER ledger_is_never_changed; DROP TRIGGER ledger_is_never_removed; ${text}`)
    database.close()
    return check(copy)
  }
  expect(harm(`UPDATE ledger SET content = replace(content, 'C1-LL-2', 'C1-LL-4') WHERE seq = 2`)).toBe('entry 2\n')
  expect(harm('DELETE FROM ledger WHERE seq = 5')).toBe('entry 6\n')
})

test('describes the format that is written, and every table of it', () => {
  const stranger = new Database(writtenArchive(), { readonly: true })
  expect(documentText).toContain(`This text describes version **${migrations.length}**`)
  const tables = stranger.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all() as string[]
  for (const table of tables) expect(documentText).toMatch(new RegExp(`^\\| .*\`${table}\``, 'm'))
  const kinds = stranger.prepare('SELECT DISTINCT kind FROM ledger').pluck().all() as string[]
  expect(kinds).toContain('calibration')
  for (const kind of kinds) expect(documentText).toMatch(new RegExp(`^\\| \`${kind}\` `, 'm'))
  stranger.close()
})

test('reads calibrations, and what is in force, by the queries of the document', () => {
  const stranger = new Database(writtenArchive(), { readonly: true })
  const [calibration] = stranger.prepare<[], Record<string, number>>(fenced('sql', 'calibrations')).all()
  expect(calibration).toMatchObject({
    calibration_id: 1,
    name: 'May',
    reading_unit: 'counts',
    b2: 0,
    b3: 0,
    verified_from_n: 200,
    verified_to_n: 600,
    in_force: 1,
  })
  // The stored cell is straight: 0.01 N per count, zero at 100 counts; its readings lie up to 5 counts off.
  expect(calibration!.b1).toBeCloseTo(0.01, 5)
  expect(calibration!.b0).toBeCloseTo(-1, 1)
  const read = stranger.prepare<[], Record<string, number>>(fenced('sql', 'calibration-rows')).all()
  expect(read.map(({ force_n, reading }) => ({ forceN: force_n, reading }))).toEqual(
    calibrationRows.map(({ forceN, reading }) => ({ forceN, reading })),
  )
  for (const { force_n, reading, residual_n } of read)
    expect(calibration!.b0! + calibration!.b1! * reading! - force_n!).toBeCloseTo(residual_n!, 6)
  stranger.close()
})
