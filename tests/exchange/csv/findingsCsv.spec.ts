import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readFindingsCsv } from '#exchange/csv/findingsCsv.ts'

let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'breakledger-table-'))
})
afterAll(() => rmSync(folder, { recursive: true }))

function read(text: string | Buffer) {
  const file = join(folder, 'table.csv')
  writeFileSync(file, text)
  return readFindingsCsv(file)
}

describe('a table of results', () => {
  it('gives a block for each row, whatever the order of its columns', async () => {
    const { observations, leftOut } = await read(
      'note,strength_MPa,wood_failure_percent,group,age_months,specimen,board,excluded_because\r\n' +
        'x,7.5,80,"Hide ""A"", lap",12,C1,B2,slipped\r\n',
    )
    expect(leftOut).toEqual([])
    expect(observations).toEqual([
      {
        group: 'Hide "A", lap',
        ageMonths: 12,
        specimen: 'C1',
        strengthMPa: 7.5,
        woodFailurePercent: 80,
        board: 'B2',
        excludedBecause: 'slipped',
        simulated: false,
      },
    ])
  })

  it('has nulls where a column or a value is missing', async () => {
    const { observations } = await read('group,strength_MPa,wood_failure_percent\n漆,7,\n')
    expect(observations[0]).toMatchObject({ group: '漆', ageMonths: null, specimen: null, woodFailurePercent: null })
  })

  it('takes a mark at its beginning, empty lines and a name that starts with #', async () => {
    const { observations } = await read('\uFEFFgroup,strength_MPa\n\n#1,7\n\n')
    expect(observations.map(({ group }) => group)).toEqual(['#1'])
  })

  it.each([
    ['A,seven', /line 2|strength_MPa is "seven"/],
    ['A,', /strength_MPa is empty/],
    ['A,0', /strength_MPa is 0, but must be above 0/],
    ['A,-3', /strength_MPa is -3/],
    [',7', /group is empty/],
    ['A,"7,5"', /"7,5"; write a decimal point/],
    ['A,7,5', /3 fields and the header 2; a decimal comma/],
  ])('leaves the row %s out and says why', async (row, why) => {
    const { observations, leftOut } = await read(`group,strength_MPa\n${row}\nB,7\n`)
    expect(observations).toHaveLength(1)
    expect(leftOut).toEqual([{ line: 2, why: expect.stringMatching(why) }])
  })

  it.each([
    ['wood_failure_percent', '130', /from 0 to 100/],
    ['age_months', '-1', /0 or more/],
    ['age_months', '', /age_months is empty/],
  ])('leaves a row with %s "%s" out', async (column, value, why) => {
    const { leftOut } = await read(`group,strength_MPa,${column}\nA,7,${value}\nB,7,1\n`)
    expect(leftOut).toEqual([{ line: 2, why: expect.stringMatching(why) }])
  })

  it.each([
    ['', /no header line/],
    ['group,psi\nA,7\n', /column strength_MPa is missing/],
    ['group,group,strength_MPa\nA,A,7\n', /column group is named twice/],
    ['group,strength_MPa\n', /no rows follow/],
    ['group,strength_MPa\nA,x\n', /line 2: strength_MPa is "x".*No row can be read/],
  ])('is refused as a whole: %j', async (text, complaint) => {
    await expect(read(text)).rejects.toThrow(complaint)
  })
})
