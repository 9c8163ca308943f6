import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { csvRecords } from '#exchange/csv/csvRecords.ts'
import { cpuRatio } from '#tests/fakes/cpuRatio.ts'

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'breakledger-records-'))
})
afterAll(() => rm(folder, { recursive: true }))

async function recordsOf(text: string) {
  const file = join(folder, 'any.csv')
  await writeFile(file, text)
  const records: [number, ...string[]][] = []
  for await (const { line, fields } of csvRecords(file)) records.push([line, ...fields])
  return records
}

describe('records of a CSV file', () => {
  it.each([
    [
      'a line each',
      'a,b\n1,\n',
      [
        [1, 'a', 'b'],
        [2, '1', ''],
      ],
    ],
    [
      'quoted commas, quotes and line ends',
      '"a,""b""",c\n"x\r\n\ny",2\n3\n',
      [
        [1, 'a,"b"', 'c'],
        [2, 'x\n\ny', '2'],
        [5, '3'],
      ],
    ],
    [
      'comments between records',
      '#c\na\n#d\n#e\nb',
      [
        [2, 'a'],
        [5, 'b'],
      ],
    ],
    [
      'no comment inside quotes or inside a line',
      '"a\n#b\n",1\n2,#c\n"#d"\n',
      [
        [1, 'a\n#b\n', '1'],
        [4, '2', '#c'],
        [5, '#d'],
      ],
    ],
    [
      'a quote behind text as it stands',
      '6" lap,a"b""\n1\n',
      [
        [1, '6" lap', 'a"b""'],
        [2, '1'],
      ],
    ],
    ['blanks before a quoted field', '1, "a,b" \n', [[1, '1', 'a,b ']]],
    [
      'a quoted field that ends with its line',
      '1,"a"\n2\n',
      [
        [1, '1', 'a'],
        [2, '2'],
      ],
    ],
  ])('are %s', async (_what, text, records) => {
    expect(await recordsOf(text)).toEqual(records)
  })

  it('are refused where a quote stays open, by the line on which its record begins', async () => {
    await expect(recordsOf('a\n#c\n\n1,"2\n3\n4\n')).rejects.toThrow('any.csv, line 4: a quoted field is never closed')
  })

  it('are refused where one is longer than a million characters, a comment too', async () => {
    const long = 'x'.repeat(1_200_000)
    for (const text of [`a\n${long}`, `a\n#${long}\nb\n`, `a\n"${'\n'.repeat(1_200_000)}"`])
      await expect(recordsOf(text)).rejects.toThrow('any.csv, line 2: the line is longer than a million characters')
  })

  it.each([
    ['an open quote over many lines', (size: number) => `a\n1,"${'x\n'.repeat(size)}"\n`],
    ['many quotes in one field', (size: number) => `a\n1,x${'"y '.repeat(size)}\n`],
    ['many doubled quotes', (size: number) => `a\n1,"${'""'.repeat(size)}"\n`],
    ['blanks before a quote', (size: number) => `a\n1,${' '.repeat(size)}"x"${' '.repeat(size)}"y"\n`],
    ['many fields', (size: number) => `a\n"1"${',2'.repeat(size)}\n`],
  ])('are read in a time that grows as the file does: %s', async (_what, text) => {
    // 16 times as much; a square would be 256 times.
    expect(await cpuRatio(15_000, 240_000, async (size) => void (await recordsOf(text(size))))).toBeLessThan(80)
  })
})
