import { execFileSync, spawnSync } from 'node:child_process'
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { keepRejectedLines } from '#archive/bench/sessions.ts'
import { addDecision } from '#archive/breaks/decisions.ts'
import { addEvaluation } from '#archive/breaks/evaluations.ts'
import { calibrations } from '#archive/calibration/calibrations.ts'
import { migrations } from '#archive/core/migrate.ts'
import { openHere } from '#archive/openHere.ts'
import { addPicture } from '#archive/specimens/pictures.ts'
import { addSpecimens, correctSpecimen } from '#archive/specimens/specimens.ts'
import { addDialReadings, decideTypedResult } from '#archive/specimens/typedResults.ts'
import type { SampleBlock } from '#contract/breaks/curve.ts'
import { curveEvent, curveEventKind, flag, loadCourse, loadRate, outcome } from '#contract/breaks/evaluation.ts'
import { dialReading } from '#contract/specimens/typedResult.ts'
import { smallPictures } from '#tests/reference/faces/smallPictures.ts'
import { rows as calibrationRows, storeCalibrations } from '../archive/storedCalibration.ts'
import { importBlocks, readBlock } from '../archive/storedImport.ts'
import { decide, resultBeside, storeReevaluation } from '../archive/storedReevaluation.ts'
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

/** The sample that a person picked as the peak of break 6. */
const picked = { index: 40, timeS: curves[5]!.timeUs[40]! / 1e6, reading: curves[5]!.readings[40]! }

/** Re-evaluation 1 is adopted (breaks 3, 5, 6), 2 waits (break 1), 3 was dropped again (break 7). Evaluation 14 is in force by itself. */
function overruleAndEvaluateAgain(database: Database.Database): void {
  const [calibrated] = calibrations(database).rows
  const { coefficients } = calibrated!.assessment.result
  const scale = { kind: 'calibration', calibrationId: 1, coefficients } as const
  const half = (breakId: number) => ({ ...resultBeside(database, breakId, { peakN: 3000 + breakId }), scale })
  storeReevaluation(database, [3, 5, 6], { kind: 'adopted' }, half)
  storeReevaluation(database, [1], null, half)
  const dropped = storeReevaluation(database, [7], { kind: 'adopted' }, half)
  decide(database, dropped, 'dropped')
  addEvaluation(database, { ...resultBeside(database, 5, { peakN: 4444 }), besideId: null })
  const word = { recordedAt: morning, by: 'bench', reason: 'a knock on the frame', specimenId: null, breakId: 6 }
  addDecision(database, { ...word, kind: 'peak-as-found' })
  addDecision(database, { ...word, kind: 'peak-picked', sample: { timeS: picked.timeS, reading: picked.reading } })
}

/** Results without a curve: one beside a break that counts, one in place of a break that was set aside, two of a file. */
function storeTyped(database: Database.Database): void {
  const reading = (specimenId: number, peakN: number) => dialReading.parse({ specimenId, peakN, resolutionN: 50 })
  addDialReadings(database, [reading(1, 100), reading(2, 4800), reading(2, 5400)], morning, 'bench')
  const word = { recordedAt: morning, by: 'bench', reason: 'misread', kind: 'set-aside' } as const
  decideTypedResult(database, { ...word, typedResultId: 3 })
  importBlocks(database, [
    readBlock(2, { number: 'old 1', peakN: 6600, areaMm2: 600, woodFailurePercent: 25, brokenOn: '2019-04-01' }),
    readBlock(3, { number: 'old 2', peakN: null, areaMm2: null, strengthMPa: 8 }),
  ])
}

function writtenArchive(): string {
  const path = join(temporaryFolder(), 'study.breakledger')
  const archive = openHere({ path, mode: 'write', program: 'breakledger test', instant: morning })
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
  keepRejectedLines(database, 1, morning, 3, Uint8Array.of(63, 0, 255))
  storeTyped(database)
  storeCalibrations(database)
  overruleAndEvaluateAgain(database)
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
  const rows = stranger.prepare<[], Record<string, unknown>>(fenced('sql', 'results')).all()
  // Break 1: 6000 N over the corrected 500 mm2. Break 2 is set aside; break 4 went to specimen 3; break 8 is no break.
  // Breaks 3 and 6 were evaluated again; break 5 once more by itself after that; what was made of 1 and 7 is not in force.
  expect(rows).toMatchObject([
    { break_id: 1, number: 'C1-LL-1', peak_n: 6000, strength_mpa: 12, peak_is: 'peak-as-found' },
    { break_id: 3, number: 'C1-LL-3', peak_n: 3003, area_mm2: 600 },
    { break_id: 4, number: 'C1-LL-3', peak_n: 6003 },
    { break_id: 5, number: null, peak_n: 4444, strength_mpa: null },
    { break_id: 6, peak_is: 'peak-picked' },
    { break_id: 7, peak_n: 6006 },
    { break_id: null, number: 'C1-LL-2', peak_n: 4800, strength_mpa: 8, peak_is: 'dial' },
    { ...{ break_id: null, started_at: '2019-04-01', number: 'old 1', strength_mpa: 11 }, wood_failure_percent: 25 },
    { break_id: null, number: 'old 2', peak_n: null, strength_mpa: 8, peak_is: 'import' },
  ])
  // By hand, from the line of the calibration: force = b0 + b1 x reading.
  const [{ b0, b1 }] = stranger.prepare<[], { b0: number; b1: number }>(fenced('sql', 'calibrations')).all() as [
    { b0: number; b1: number },
  ]
  expect(rows[4]!.peak_n).toBeCloseTo(b0 + b1 * picked.reading, 9)
  // The program's own lists say the same.
  const listed = stranger.prepare('SELECT break_id, evaluation_id, peak_n FROM break_current ORDER BY break_id').all()
  const inForce = stranger.prepare<[], { break_id: number; evaluation_id: number }>(fenced('sql', 'in-force')).all()
  expect(inForce.map(({ break_id, evaluation_id }) => [break_id, evaluation_id])).toEqual(
    (listed as { break_id: number; evaluation_id: number }[]).map((row) => [row.break_id, row.evaluation_id]),
  )
  // Eight first evaluations, then 9 to 11 for breaks 3, 5 and 6, 12 for 1, 13 for 7, 14 for 5 alone.
  expect(inForce.map(({ evaluation_id }) => evaluation_id)).toEqual([1, 2, 9, 4, 14, 11, 7, 8])
  for (const row of rows.filter(({ break_id }) => break_id !== null))
    expect((listed as { break_id: number; peak_n: number }[])[Number(row.break_id) - 1]!.peak_n).toBeCloseTo(
      Number(row.peak_n),
      9,
    )
  stranger.close()
})

test('says what a re-evaluation changed by the query of the document', () => {
  const stranger = new Database(writtenArchive(), { readonly: true })
  expect(stranger.prepare(fenced('sql', 'reevaluation')).all()).toMatchObject([
    { break_id: 3, before_id: 3, before_n: 6002, now_id: 9, now_n: 3003, difference_n: -2999 },
    { break_id: 5, before_id: 5, before_n: 6004, now_id: 10, now_n: 3005 },
    { break_id: 6, before_id: 6, before_n: 6005, now_id: 11, now_n: 3006 },
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

test.runIf(shellIsThere)('takes pictures out with sqlite3, as they came', () => {
  const folder = temporaryFolder()
  const path = join(folder, 'pictures.breakledger')
  const archive = openHere({ path, mode: 'write', program: 'breakledger test', instant: morning })
  storeBreak(archive.database, null)
  const picture = {
    specimenId: null,
    breakId: 1,
    recordedAt: morning,
    by: '',
    name: 'x',
    mediaType: 'image/png' as const,
  }
  addPicture(archive.database, picture, smallPictures.png)
  archive.close()
  const printed = execFileSync('sh', ['-c', fenced('sh', 'picture-out')], {
    cwd: folder,
    env: { ...process.env, ARCHIVE: path },
    encoding: 'utf8',
  })
  expect(new Uint8Array(readFileSync(join(folder, 'picture-1')))).toEqual(smallPictures.png)
  const [written, recorded, computed] = printed.trim().split('\n')
  expect(Number(written)).toBe(smallPictures.png.length)
  expect(computed).toBe(recorded)
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
  const database = new Database(path, { readonly: true })
  const seq = Number(database.prepare('SELECT seq FROM ledger WHERE content LIKE \'%"C1-LL-2"%\'').pluck().get())
  database.close()
  expect(harm(`UPDATE ledger SET content = replace(content, 'C1-LL-2', 'C1-LL-4') WHERE seq = ${seq}`)).toBe(
    `entry ${seq}\n`,
  )
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

/** Tables of the kinds of entries, as the table in the chapter "Hash chain" names them. */
function documentedKinds(): { kind: string; table: string; key: string }[] {
  return [...documentText.matchAll(/^\| `([a-z-]+)` \| `([a-z_]+)\.([a-z_]+)` \|/gm)].map(([, kind, table, key]) => ({
    kind: kind!,
    table: table!,
    key: key!,
  }))
}

const camelCase = (name: string) => name.replace(/_([a-z0-9])/g, (_, letter: string) => letter.toUpperCase())
/** Columns that are absent where they are NULL. */
const later = ['course', 'reevaluation_id', 'beside_id', 'cause', 'sample_time_s', 'sample_reading', 'wood', 'board']
/** Columns, from the first to the last, that stand together in a field of their own. */
const together: Record<string, { field: string; first: string; last: string }> = {
  specimen: { field: 'fields', first: 'number', last: 'board' },
  evaluation: { field: 'result', first: 'outcome', last: 'course' },
  decision: { field: 'sample', first: 'sample_time_s', last: 'sample_reading' },
}

/** The names of a result without a curve that the document gives one by one. */
const typedNames: Record<string, string> = { sheet_row: 'row', sheet_column: 'column', strength_mpa: 'strengthMPa' }

/** The record as the document says that the chain holds it, from the columns of its row alone. */
function byTheRule(kind: string, row: Record<string, unknown>): unknown {
  const content: Record<string, unknown> = {}
  const inField: Record<string, unknown> = {}
  const columns = Object.keys(row)
  const group = together[kind]
  for (const [at, [name, value]] of Object.entries(row).entries()) {
    if (name === 'revision_id' || (later.includes(name) && value === null)) continue
    const isInField = group !== undefined && columns.indexOf(group.first) <= at && at <= columns.indexOf(group.last)
    const key = typedNames[name] ?? camelCase(kind === 'decision' ? name.replace(/^sample_/, '') : name)
    const json = typeof value === 'string' && /^[[{]/.test(value) ? JSON.parse(value) : value
    const target = isInField ? inField : content
    // `demo` is the one truth value of a record.
    target[key] = name === 'demo' ? value === 1 : json instanceof Buffer ? json.toString('hex') : json
  }
  return Object.keys(inField).length === 0 ? content : { ...content, [group!.field]: inField }
}

test('holds each entry of the chain against its row by the rule of the document', () => {
  const stranger = new Database(writtenArchive(), { readonly: true })
  const kinds = documentedKinds()
  const entries = stranger.prepare('SELECT kind, record_id, content FROM ledger').all() as Record<string, string>[]
  const rowOf = (table: string, key: string, id: unknown) =>
    stranger.prepare(`SELECT * FROM ${table} WHERE ${key} = ?`).get(id) as Record<string, unknown>
  for (const { kind, record_id: id, content } of entries) {
    const { table, key } = kinds.find((one) => one.kind === kind)!
    const expected =
      kind === 'break'
        ? {
            header: byTheRule(kind, rowOf('break_header', 'break_id', id)),
            end: byTheRule(kind, rowOf('break_end', 'break_id', id)),
          }
        : byTheRule(kind!, rowOf(table, key, id))
    expect(JSON.parse(content!)).toEqual(expected)
  }
  expect(new Set(entries.map(({ kind }) => kind)).size).toBeGreaterThan(16)
  stranger.close()
})

test('names everything that a result can hold', () => {
  const words = [
    ...outcome.options,
    ...flag.options,
    ...curveEventKind.options,
    ...Object.keys(curveEvent.shape),
    ...curveEvent.shape.manner.unwrap().unwrap().options,
    ...Object.keys(loadCourse.shape),
    ...Object.keys(loadRate.shape),
    ...Object.keys(loadCourse.shape.toe.unwrap().shape),
  ]
  for (const word of words) expect(documentText).toContain(`\`${word}\``)
  const stranger = new Database(writtenArchive(), { readonly: true })
  const columns = stranger.prepare("SELECT name FROM pragma_table_info('evaluation')").pluck().all() as string[]
  const [said] = /## What a result says([\s\S]*?)## Which result/.exec(documentText)!.slice(1)
  for (const column of columns.slice(columns.indexOf('outcome'), columns.indexOf('course') + 1))
    expect(said).toContain(`\`${column}\``)
  stranger.close()
})
