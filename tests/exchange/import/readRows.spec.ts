import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { ImportedRow } from '#contract/specimens/importedResult.ts'
import { importMapping } from '#contract/specimens/importMapping.ts'
import { readSheetCsv } from '#exchange/csv/sheetCsv.ts'
import { tableRows } from '#exchange/import/readRows.ts'
import { readXlsx } from '#exchange/sheets/readXlsx.ts'

type MappingText = Record<string, unknown>
const perSpecimen = { layout: 'row-per-specimen' }
const load = { column: 'Load', unit: 'N' }

async function tableOf(csv: string, given: MappingText) {
  const mapping = importMapping.parse(given)
  const said = { delimiter: mapping.delimiter ?? null, encoding: null, headerRow: mapping.headerRow }
  const { rows, ...rest } = tableRows(await readSheetCsv('a.csv', Buffer.from(csv), said), mapping)
  return { rows: [...rows], ...rest }
}
const rowsOf = async (csv: string, fields: MappingText, more: MappingText = {}) =>
  (await tableOf(csv, { ...perSpecimen, fields, ...more })).rows
const valuesOf = (row: ImportedRow | undefined) => {
  if (row?.outcome !== 'read') throw new Error(JSON.stringify(row))
  return row.values
}
const reasonOf = (row: ImportedRow | undefined) => (row?.outcome === 'rejected' ? row.reason : row)

describe('a row per specimen', () => {
  it('gives every field in the units of the archive', async () => {
    const [row] = await rowsOf(
      'No,Glue,Gap,L,W,Load,Wood,Pattern,Glued,Broken,Age,Note\nC1-01,casein C1,1/32,1 3/16,3/4,450,30 %,cf,1.3.2019,2.3.2020,12 months,ok\n',
      {
        number: { column: 'No' },
        adhesive: { column: 'glue' },
        bondLineGap: { column: 'Gap', unit: 'in' },
        overlapLength: { column: 'L', unit: 'in' },
        overlapWidth: { column: 'W', unit: 'in' },
        load: { column: 'Load', unit: 'lbf' },
        woodFailurePercent: { column: 'Wood' },
        failurePattern: { column: 'Pattern' },
        gluedOn: { column: 'Glued', dateFormat: 'D.M.YYYY' },
        brokenOn: { column: 'Broken', dateFormat: 'D.M.YYYY' },
        ageMonths: { column: 'Age' },
        note: { column: 'Note' },
        jointType: { value: 'face' },
      },
    )
    expect(row).toMatchObject({ row: 2, column: null })
    expect(valuesOf(row)).toMatchObject({
      number: 'C1-01',
      adhesive: 'casein C1',
      jointType: 'face',
      bondLineGapMm: 25.4 / 32,
      woodFailurePercent: 30,
      failurePattern: 'CF',
      gluedOn: '2019-03-01',
      brokenOn: '2020-03-02',
      ageMonths: 12,
      note: 'ok',
    })
    // Common practice: load / (length x width); 1 3/16 in x 3/4 in = 0.890625 in2, 450 / 0.890625 = 505.263 psi
    expect(valuesOf(row).strengthMPa! / 0.006894757293168361).toBeCloseTo(505.2631579, 6)
    expect(valuesOf(row).areaMm2!).toBeCloseTo(0.890625 * 645.16, 6)
  })

  it('computes the strength of 1 in x 3/4 in as load / 0.75 in2', async () => {
    const [row] = await rowsOf('Load\n300\n', {
      load: { column: 'Load', unit: 'lbf' },
      area: { value: 0.75, unit: 'in2' },
    })
    expect(valuesOf(row).strengthMPa! / 0.006894757293168361).toBeCloseTo(400, 9)
  })

  it('has no load where a strength stands without an area, and one where it stands with it', async () => {
    const strength = { column: 'S', unit: 'MPa' }
    const [alone] = await rowsOf('S\n8\n', { strength })
    expect(valuesOf(alone)).toMatchObject({ peakN: null, strengthMPa: 8, areaMm2: null })
    const [both] = await rowsOf('S\n8\n', { strength, area: { value: 600, unit: 'mm2' } })
    expect(valuesOf(both)).toMatchObject({ peakN: 4800, strengthMPa: 8 })
  })

  it('says of each rejected row in one sentence where and why, and reads the others', async () => {
    const rows = await rowsOf(
      'No,Load,Wood,Area,Glued,Broken\n' +
        'a,text,0,600,,\n' +
        'b,100,130,600,,\n' +
        'c,100,0,0,,\n' +
        'd,12 stone,0,600,,\n' +
        'e,,0,600,,\n' +
        'f,100,0,600,2020-05-01,2020-04-01\n' +
        'g,100,,600,2020-02-30,\n' +
        'h,100,,600,,\n',
      {
        number: { column: 'No' },
        load,
        woodFailurePercent: { column: 'Wood' },
        area: { column: 'Area', unit: 'mm2' },
        gluedOn: { column: 'Glued' },
        brokenOn: { column: 'Broken' },
      },
    )
    expect(rows.slice(0, 7).map(reasonOf)).toEqual([
      'Row 2, column B (Load), load: “text” is not a number as people write one.',
      'Row 3, column C (Wood), wood failure: 130 % is not from 0 to 100 %.',
      'Row 4, column D (Area), bonded area: 0 is not above 0.',
      'Row 5, column B (Load), load: “12 stone” has a unit that is none of N, kN, lbf, kgf.',
      'Row 6: neither a load nor a strength stands in it.',
      'Row 7: it was broken on 2020-04-01, before it was glued on 2020-05-01.',
      'Row 8, column E (Glued), day of glue-up: “2020-02-30” is a day that does not exist.',
    ])
    expect(rows.map((row) => (row.outcome === 'rejected' ? row.number : valuesOf(row).number))).toEqual([...'abcdefgh'])
    expect(valuesOf(rows[7]).woodFailurePercent).toBeNull()
  })

  it('rejects a load and a strength that contradict each other, not those that were rounded', async () => {
    const fields = { load, strength: { column: 'S', unit: 'MPa' }, area: { value: 600, unit: 'mm2' } }
    const rows = await rowsOf('Load,S\n5000,8.3\n5000,9\n', fields)
    expect(valuesOf(rows[0]).strengthMPa).toBeCloseTo(5000 / 600, 12)
    expect(reasonOf(rows[1])).toBe('Row 3: load and area give 8.33 MPa, and the strength says 9.00 MPa.')
  })

  it('rejects a row of a file of text with more fields than headings, as an unquoted decimal comma makes', async () => {
    expect(reasonOf((await rowsOf('No,Load\na,12,5\n', { load }))[0])).toBe(
      'Row 2: it has 3 fields and the headings 2; a decimal comma would do that.',
    )
  })

  it('counts empty rows below the headings, and knows columns by letters or numbers without any', async () => {
    const table = await tableOf('\n5,x\n\n\n6,y\n', {
      ...perSpecimen,
      headerRow: 0,
      fields: { load: { column: 1, unit: 'N' }, adhesive: { column: 'B' } },
    })
    expect(table.emptyRows).toBe(3)
    expect(table.rows.map((row) => [row.row, valuesOf(row).peakN, valuesOf(row).adhesive])).toEqual([
      [2, 5, 'x'],
      [5, 6, 'y'],
    ])
  })

  it('finds from all numbers of the file which sign parts decimals', async () => {
    const rows = await rowsOf('Load;W\n12,5;1\n1.234;0\n', { load, woodFailurePercent: { column: 'W' } })
    expect(rows.map((row) => valuesOf(row).peakN)).toEqual([12.5, 1234])
    const unknown = await rowsOf('Load;W\n12;1\n1.234;0\n', { load })
    expect(unknown.map(({ outcome }) => outcome)).toEqual(['read', 'rejected'])
    const said = await rowsOf('Load;W\n12;1\n1.234;0\n', { load }, { decimal: ',' })
    expect(valuesOf(said[1]).peakN).toBe(1234)
  })
})

describe('a row per group', () => {
  const group = { layout: 'row-per-group', replicates: { columns: ['1', '2', '3'] } }

  it('gives a block for each cell that is filled, under the heading of its column', async () => {
    const { rows } = await tableOf('Glue,1,2,3\nC1,10,,12 kN\nR2,20,20,abc\n,,,\nU3,,,\n', {
      ...group,
      fields: { adhesive: { column: 'Glue' }, load: { unit: 'N' } },
    })
    expect(rows.map((row) => [row.row, row.column, row.outcome === 'read' ? row.values.peakN : row.outcome])).toEqual([
      [2, '1', 10],
      [2, '3', 12_000],
      [3, '1', 20],
      [3, '2', 20],
      [3, '3', 'rejected'],
      [5, null, 'rejected'],
    ])
  })

  it('refuses a mapping whose replicates have no meaning, or that numbers a row of several blocks', async () => {
    const csv = 'Glue,1,2,3\nC1,1,2,3\n'
    await expect(tableOf(csv, { ...group, fields: {} })).rejects.toThrow('either the load or the strength')
    await expect(
      tableOf(csv, { ...group, fields: { load: { unit: 'N' }, strength: { unit: 'MPa' } } }),
    ).rejects.toThrow('either the load or the strength')
    await expect(
      tableOf(csv, { ...group, fields: { load: { unit: 'N' }, number: { column: 'Glue' } } }),
    ).rejects.toThrow('A number names one block')
  })
})

describe('blocks side by side', () => {
  it('read the columns that belong together, with units said once', async () => {
    const { rows } = await tableOf('Glue,Load,Wood,Load,Wood\nC1,10,20,30,\nR2,,,50,60\nU3,,5,,\n', {
      layout: 'blocks',
      fields: { adhesive: { column: 'A' }, load: { unit: 'kN' } },
      blocks: [
        { load: 'B', woodFailurePercent: 'C' },
        { load: 'D', woodFailurePercent: 'E' },
      ],
    })
    expect(
      rows.map((row) =>
        row.outcome === 'read'
          ? [row.row, row.column, row.values.adhesive, row.values.peakN, row.values.woodFailurePercent]
          : row.reason,
      ),
    ).toEqual([
      [2, 'B', 'C1', 10_000, 20],
      [2, 'D', 'C1', 30_000, null],
      [3, 'D', 'R2', 50_000, 60],
      'Row 4, column B: neither a load nor a strength stands in it.',
    ])
  })
})

describe('columns of a mapping', () => {
  it('that the sheet lacks, or has twice, are named with what there is', async () => {
    await expect(rowsOf('a,b\n1,2\n', { load })).rejects.toThrow(
      'No column is headed “Load”. The headings in row 1 are: a, b.',
    )
    await expect(rowsOf('Load,Load\n1,2\n', { load })).rejects.toThrow('More than one column is headed “Load”: A, B.')
    await expect(rowsOf('\nLoad\n1\n', { load })).rejects.toThrow('Row 1 should hold the headings')
    await expect(rowsOf('Load\n1\n', { load, note: {} })).rejects.toThrow('does not say where the note stands')
  })

  it('are found whatever their capitals, and exactly where two differ in them alone', async () => {
    expect(valuesOf((await rowsOf('LOAD\n1\n', { load }))[0]).peakN).toBe(1)
    expect(valuesOf((await rowsOf('LOAD,Load\n1,2\n', { load }))[0]).peakN).toBe(2)
  })
})

describe('values by the colour of a cell', () => {
  const sheet = async () => (await readXlsx('odd.xlsx', sample('odd-cells.xlsx'), null)).sheet
  const sample = (name: string) => readFileSync(new URL(`../../../samples/sheets/${name}`, import.meta.url))
  const coloured = async (fills: Record<string, number>, noFill: number | null = 0) => {
    const fields = { load, woodFailurePercent: { fillOf: 'load', fills, noFill } }
    return [...tableRows(await sheet(), importMapping.parse({ ...perSpecimen, fields })).rows]
  }

  it('are those of the mapping, however the code is written; a colour without one spoils the row', async () => {
    const rows = await coloured({ '#ffff00': 25, 'theme 4 +0.60': 50 })
    expect(rows.slice(0, 3).map((row) => valuesOf(row).woodFailurePercent)).toEqual([25, 50, 25])
    const theme = await coloured({ FFFF00: 25 })
    expect(reasonOf(theme[1])).toBe(
      'Row 3, column C (Load), wood failure: the mapping does not say what the colour theme 4 +0.60 of the cell means.',
    )
    // A hatching means nothing; 7/8 kN without a colour is read
    expect(theme.map(({ outcome }) => outcome)).toEqual([
      'read',
      'rejected',
      'read',
      ...Array(2).fill('rejected'),
      'read',
      'rejected',
    ])
  })

  it('come from the fill of a column that is mapped', async () => {
    const fields = { load, woodFailurePercent: { fillOf: 'note', fills: {} } }
    const mapping = importMapping.parse({ ...perSpecimen, fields })
    const read = await sheet()
    expect(() => tableRows(read, mapping)).toThrow('The colour of the note is asked for, and it has no column.')
  })

  it('give the counts and means that openpyxl computes from the same file', async () => {
    const mapping = importMapping.parse(JSON.parse(sample('wide-by-colour.map.json').toString()))
    const wide = (await readXlsx('wide.xlsx', sample('wide-by-colour.xlsx'), mapping.sheet!)).sheet
    const groups = new Map<string, { strength: number[]; wood: number[] }>()
    for (const row of tableRows(wide, mapping).rows) {
      const { adhesive, exposure, strengthMPa, woodFailurePercent } = valuesOf(row)
      const group = groups.get(`${adhesive}, ${exposure}`) ?? { strength: [], wood: [] }
      groups.set(`${adhesive}, ${exposure}`, group)
      group.strength.push(strengthMPa!)
      group.wood.push(woodFailurePercent!)
    }
    // samples/sheets/sheetStatistics.py
    const expected: {
      adhesive: string
      exposure: string
      n: number
      meanMPa: number
      woodFailureMeanPercent: number
    }[] = JSON.parse(sample('wide-by-colour.expected.json').toString())
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
    expect(groups.size).toBe(expected.length)
    for (const { adhesive, exposure, n, meanMPa, woodFailureMeanPercent } of expected) {
      const group = groups.get(`${adhesive}, ${exposure}`)!
      expect(group.strength.length).toBe(n)
      expect(mean(group.strength)).toBeCloseTo(meanMPa, 10)
      expect(mean(group.wood)).toBeCloseTo(woodFailureMeanPercent, 10)
    }
  })
})

describe('what an old sheet holds besides', () => {
  const fields = { number: { column: 'No' }, load, area: { value: 600, unit: 'mm2' } }

  it('a row that sums up others is no block, and says why', async () => {
    const rows = await rowsOf('No,Load\n1,4800\n2,5000\nMean,4900\nn,2\n', fields)
    expect(rows.map(({ outcome }) => outcome)).toEqual(['read', 'read', 'rejected', 'rejected'])
    expect(reasonOf(rows[2])).toBe(
      'Row 4: “Mean” stands in it, and a row that sums up others is no block; call it otherwise if it is one.',
    )
  })

  it('a dash where a value may be missing says nothing, and in a load it is no number', async () => {
    const more = { ...fields, woodFailurePercent: { column: 'Wood' } }
    const [blank, spoilt] = await rowsOf('No,Load,Wood\n1,4800,-\n2,-,50\n', more)
    expect(blank).toMatchObject({
      values: { woodFailurePercent: null },
      remarks: ['“-” was taken to say nothing of the wood failure.'],
    })
    expect(reasonOf(spoilt)).toContain('“-” is not a number')
  })

  it('a strength that no wood bears is asked about, for a unit may be wrong', async () => {
    const [row] = await rowsOf('No,Load\n1,4800\n', { ...fields, load: { column: 'Load', unit: 'kN' } })
    expect(row).toMatchObject({
      outcome: 'read',
      remarks: [expect.stringMatching(/^Is that right\? 8000\sMPa .* of the load and of the area/)],
    })
  })

  it('an age in years is one in months times twelve', async () => {
    const ages = (text: string, unit?: string) =>
      rowsOf(`No,Load,Age\n1,4800,${text}\n`, {
        ...{ ...fields, ageMonths: { column: 'Age', ...(unit === undefined ? {} : { unit }) } },
      }).then(([row]) => valuesOf(row).ageMonths)
    expect(await ages('2', 'years')).toBe(24)
    expect(await ages('1.5 years')).toBe(18)
    expect(await ages('1.1 years')).toBe(13.2)
    expect(await ages('18 months', 'years')).toBe(18)
    expect(await ages('18')).toBe(18)
  })
})
