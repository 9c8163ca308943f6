import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { Trouble } from '#contract/errors.ts'
import { curveCsvText, readCurveCsv } from '#exchange/csv/curveCsv.ts'
import { cpuRatio } from '#tests/fakes/cpuRatio.ts'

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'breakledger-csv-'))
})
afterAll(() => rm(folder, { recursive: true }))

async function fileWith(name: string, text: string): Promise<string> {
  const file = join(folder, name)
  await writeFile(file, text)
  return file
}

async function troubleOf(name: string, text: string): Promise<Trouble> {
  const file = await fileWith(name, text)
  const thrown = await readCurveCsv(file).then(
    () => null,
    (error: unknown) => error,
  )
  expect(thrown).toBeInstanceOf(Trouble)
  return thrown as Trouble
}

describe('readCurveCsv', () => {
  it('reads times and forces', async () => {
    const table = await readCurveCsv(await fileWith('plain.csv', 'time_s,force_N\n0,1.5\n0.01,-2e1\n'))
    expect([...table.timeS]).toEqual([0, 0.01])
    expect([...table.columns.force_N!]).toEqual([1.5, -20])
    expect(table.columns.counts).toBeUndefined()
  })

  it('takes CRLF, a byte order mark, comments, quoted fields, other columns and blank lines at the end', async () => {
    const text =
      '\uFEFF# a, comment\r\n"note, ""quoted""",counts,time_s\r\n"two\r\nlines",7,0\r\n# between\r\nx,"8",0.5\r\n\r\n'
    const table = await readCurveCsv(await fileWith('rfc4180.csv', text))
    expect([...table.timeS]).toEqual([0, 0.5])
    expect([...table.columns.counts!]).toEqual([7, 8])
  })

  it('reads a last line without a line end', async () => {
    const table = await readCurveCsv(await fileWith('open-end.csv', 'time_s,force_lbf\n0,1\n1,2'))
    expect([...table.columns.force_lbf!]).toEqual([1, 2])
  })

  it('reads a displacement that was measured along, and knows when there is none', async () => {
    const table = await readCurveCsv(await fileWith('gauge.csv', 'displacement_mm,time_s,force_N\n0,0,1\n0.02,1,4\n'))
    expect([...table.displacementMm!]).toEqual([0, 0.02])
    expect(Object.keys(table.columns)).toEqual(['force_N'])
    const none = 'time_s,force_N,displacement_mm\n0,1,\n1,2,\n'
    expect((await readCurveCsv(await fileWith('no-gauge.csv', none))).displacementMm).toBeNull()
  })

  it('leaves out a column that is empty throughout', async () => {
    const table = await readCurveCsv(await fileWith('no-scale.csv', 'time_s,counts,force_N\n0,5,\n1,6,\n'))
    expect(Object.keys(table.columns)).toEqual(['counts'])
  })

  it.each([
    ['falls', 'time_s,force_N\n0,1\n2,2\n1,3\n', 4, /time_s is 1 after 2/],
    ['stands', 'time_s,force_N\n0,1\n0,2\n', 3, /times must rise/],
    ['text', '# c\ntime_s,force_N\n0,1\n1,abc\n', 4, /force_N is "abc", which is no number/],
    ['comma', 'time_s,force_N\n0,1\n1,"2,5"\n', 3, /"2,5"/],
    ['infinite', 'time_s,force_N\n0,1e999\n', 2, /force_N is "1e999"/],
    ['counts-rounded', 'time_s,counts\n0,9007199254740993\n', 2, /counts is "9007199254740993", which is too large/],
    ['force-rounded', 'time_s,force_N\n0,-9007199254740993\n', 2, /force_N is "-9007199254740993", which is too large/],
    ['hexadecimal', 'time_s,counts\n0,0x10\n', 2, /no number/],
    ['no-time', 'time_s,force_N\n,1\n', 2, /time_s is empty/],
    ['hole', 'time_s,force_N\n0,1\n1,\n2,3\n', 3, /empty here and filled elsewhere/],
    ['late', 'time_s,counts,force_N\n0,1,\n1,2,3\n', 2, /force_N is empty here/],
    ['no-samples', 'time_s,force_N\n', 1, /no samples/],
    ['empty', '', 1, /no header line/],
    ['semicolons', 'time_s;force_N\n0;1\n', 1, /no curve header/],
    ['no-value', 'time_s,position_mm\n0,1\n', 1, /force_N, force_lbf and counts are all missing/],
    ['gauge-alone', 'time_s,displacement_mm\n0,1\n', 1, /force_N, force_lbf and counts are all missing/],
    ['gauge-hole', 'time_s,force_N,displacement_mm\n0,1,0\n1,2,\n', 3, /displacement_mm is empty here/],
    ['twice', 'time_s,force_N,force_N\n0,1,1\n', 1, /named twice/],
    ['quote', 'time_s,force_N\n0,"1\n1,2\n', 2, /never closed/],
  ])('names file and line when it %s', async (name, text, line, message) => {
    const trouble = await troubleOf(`${name}.csv`, text)
    expect(trouble.code).toBe('not-readable')
    expect(trouble.message).toContain(`${name}.csv, line ${line}:`)
    expect(trouble.message).toMatch(message)
    expect(trouble.hint).not.toBe('')
  })

  it('says when there is no such file', async () => {
    await expect(readCurveCsv(join(folder, 'missing.csv'))).rejects.toMatchObject({ code: 'not-found' })
    await expect(readCurveCsv(folder)).rejects.toMatchObject({ code: 'not-readable' })
  })

  it('reads a hundred thousand lines in pieces that cut lines anywhere', async () => {
    let text = 'time_s,counts\n'
    for (let i = 0; i < 100_000; i++) text += `${i / 1000},${i % 977}\n`
    const table = await readCurveCsv(await fileWith('long.csv', text))
    expect(table.timeS.length).toBe(100_000)
    expect(table.columns.counts![99_999]).toBe(99_999 % 977)
  })
})

describe('curveCsvText', () => {
  it('writes what readCurveCsv reads, and leaves force empty where there is no scale', async () => {
    const timeS = Float64Array.from([0, 0.0125, 0.025])
    const counts = Float64Array.from([-5, 0, 123456])
    const text = [...curveCsvText({ timeS, counts, forceN: null }, ['tare 3\ncounts'])].join('')
    expect(text).toBe('# tare 3 counts\ntime_s,counts,force_N\n0.000000,-5,\n0.012500,0,\n0.025000,123456,\n')
    const table = await readCurveCsv(await fileWith('written.csv', text))
    expect(table.timeS).toEqual(timeS)
    expect(table.columns.counts).toEqual(counts)
  })

  it('loses no digit of a force', async () => {
    const forceN = Float64Array.from([Math.PI, 1e-7, -12345.678901234567])
    const text = [...curveCsvText({ timeS: Float64Array.from([0, 1, 2]), counts: null, forceN })].join('')
    expect((await readCurveCsv(await fileWith('digits.csv', text))).columns.force_N).toEqual(forceN)
  })
})

it.each([
  ['digits in a field', (size: number) => `time_s,force_N\n0,${'7'.repeat(size)}x\n`],
  ['columns in the header', (size: number) => `time_s,${Array.from({ length: size / 8 }, (_, i) => `c${i}`).join()}\n`],
])('refuses a curve of many %s in a time that grows as the file does', async (_what, text) => {
  const refused = async (size: number) =>
    expect((await troubleOf('hostile.csv', text(size))).message).toContain('hostile')
  // 16 times as much; a square would be 256 times.
  expect(await cpuRatio(30_000, 480_000, refused)).toBeLessThan(80)
})
