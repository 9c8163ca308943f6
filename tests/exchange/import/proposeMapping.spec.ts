import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { importMapping } from '#contract/specimens/importMapping.ts'
import { readSheetCsv } from '#exchange/csv/sheetCsv.ts'
import { lookAtSheet } from '#exchange/import/lookAtSheet.ts'
import { tableRows } from '#exchange/import/readRows.ts'
import { readXlsx } from '#exchange/sheets/readXlsx.ts'

const samples = join(import.meta.dirname, '../../../samples/sheets')

async function sheetOf(csv: string) {
  return {
    sheets: [],
    sheet: await readSheetCsv('a.csv', Buffer.from(csv), { delimiter: null, encoding: null, headerRow: 1 }),
  }
}
const proposed = async (csv: string) => {
  const file = await sheetOf(csv)
  const { proposed: mapping } = await lookAtSheet(file, null, '')
  // What is proposed can be used as it stands
  expect(importMapping.parse(mapping)).toEqual(mapping)
  return { mapping, rows: [...tableRows(file.sheet, mapping).rows] }
}

it('reads a row per specimen from its headings', async () => {
  const { mapping, rows } = await proposed(
    'No,Glue,Load (lbf),Area (in2),Wood failure %,Broken\nA-1,casein C1,450,0.75,25,25/12/2019\nA-2,casein C1,470,0.75,,3/1/2020\n',
  )
  expect(mapping).toEqual({
    headerRow: 1,
    layout: 'row-per-specimen',
    fields: {
      number: { column: 'No' },
      adhesive: { column: 'Glue' },
      load: { column: 'Load (lbf)', unit: 'lbf' },
      area: { column: 'Area (in2)', unit: 'in2' },
      woodFailurePercent: { column: 'Wood failure %' },
      // The 25th can be no month
      brokenOn: { column: 'Broken', dateFormat: 'D/M/YYYY' },
    },
  })
  expect(rows.map(({ outcome }) => outcome)).toEqual(['read', 'read'])
})

it('takes numbered columns for replicates, with the unit of the title above', async () => {
  const { mapping, rows } = await proposed(',Peak load in N,,\nAdhesive,1,2,3\nepoxy E4,4800,4900,\n')
  expect(mapping).toEqual({
    ...{ headerRow: 2, layout: 'row-per-group', replicates: { columns: ['1', '2', '3'] } },
    fields: { adhesive: { column: 'Adhesive' }, load: { unit: 'N' } },
  })
  expect(rows).toHaveLength(2)
})

it('makes blocks of columns that stand side by side again and again', async () => {
  const { mapping, rows } = await proposed(
    'Adhesive,Load N,Wood,Load N,Wood failure\nC1,4800,50,4700,\n'.replace('Wood,', 'Wood failure,'),
  )
  expect(mapping).toMatchObject({
    layout: 'blocks',
    fields: { adhesive: { column: 'Adhesive' }, load: { unit: 'N' } },
    blocks: [
      { load: 'B', woodFailurePercent: 'C' },
      { load: 'D', woodFailurePercent: 'E' },
    ],
  })
  expect(rows).toHaveLength(2)
})

it('takes titles above replicates that begin anew for the exposure of each', async () => {
  const { mapping } = await proposed(',loft,,bilge,\nAdhesive,1,2,1,2\nC1,4800,4700,3800,3700\n')
  expect(mapping).toMatchObject({
    layout: 'blocks',
    blocks: [
      { load: 'B', exposure: { value: 'loft' } },
      { load: 'C', exposure: { value: 'loft' } },
      { load: 'D', exposure: { value: 'bilge' } },
      { load: 'E', exposure: { value: 'bilge' } },
    ],
  })
})

it('leaves a load and its strength in one row', async () => {
  const { mapping } = await proposed('Adhesive,Load lbf,psi\nC1,450,600\n')
  expect(mapping).toMatchObject({
    layout: 'row-per-specimen',
    fields: { load: { unit: 'lbf' }, strength: { unit: 'psi' } },
  })
})

it('proposes for the wide sheet of the samples what reads all of its blocks, colours apart', async () => {
  const bytes = readFileSync(join(samples, 'wide-by-colour.xlsx'))
  const file = await readXlsx('wide.xlsx', bytes, null)
  const { proposed: mapping, columns } = await lookAtSheet(file, null, '')
  const known = JSON.parse(readFileSync(join(samples, 'wide-by-colour.map.json'), 'utf8'))
  expect(mapping).toMatchObject({
    ...{ sheet: 'Shear blocks', headerRow: 2, layout: 'row-per-group', replicates: known.replicates },
    fields: {
      adhesive: { column: 'Adhesive' },
      exposure: { column: 'Condition' },
      woodFailurePercent: { fillOf: 'load', fills: {} },
      note: { column: 'Remark' },
    },
  })
  const colours = new Set(columns.flatMap(({ fills }) => fills.map(({ fill }) => fill)))
  for (const fill of Object.keys(known.fields.woodFailurePercent.fills)) expect(colours).toContain(fill)
})

it('parts titles into exposure and age, and takes a heading from the upper row where the lower has none', async () => {
  const { mapping, rows } = await proposed(
    'Adhesive,"Dry, 0 months",,"Soaked, 2 years",\n,Load N,WF,Load N,WF\nC1,4800,50,4700,60\n',
  )
  expect(mapping).toMatchObject({
    headerRow: 2,
    fields: { adhesive: { column: 'A' } },
    blocks: [
      { load: 'B', woodFailurePercent: 'C', exposure: { value: 'Dry' }, ageMonths: { value: 0 } },
      { load: 'D', woodFailurePercent: 'E', exposure: { value: 'Soaked' }, ageMonths: { value: 24 } },
    ],
  })
  expect(rows).toMatchObject([
    { values: { adhesive: 'C1', exposure: 'Dry', ageMonths: 0, peakN: 4800 } },
    { values: { adhesive: 'C1', exposure: 'Soaked', ageMonths: 24, peakN: 4700 } },
  ])
})

it('takes headings that are ages for those of the loads below them', async () => {
  const { mapping } = await proposed('Adhesive,0 months,6 months,2 years\nC1,4800,4700,4600\n')
  expect(mapping.blocks).toEqual([
    { load: '0 months', ageMonths: { value: 0 } },
    { load: '6 months', ageMonths: { value: 6 } },
    { load: '2 years', ageMonths: { value: 24 } },
  ])
})

it('gives each of the blocks side by side all that stands in as many columns', async () => {
  const { mapping } = await proposed(
    'Adhesive,Lot,Area mm2,Load N,Age,Lot,Area mm2,Load N,Age\nC1,7,600,4800,12,8,610,4700,24\n',
  )
  expect(mapping.blocks).toEqual([
    { load: 'D', lot: 'B', area: 'C', ageMonths: 'E' },
    { load: 'H', lot: 'F', area: 'G', ageMonths: 'I' },
  ])
})

it('reads days that may be two as those that can be but one, in their column or in the other', async () => {
  const { mapping } = await proposed(
    'No,Load N,Glued,Broken\n1,4800,1.3.2019,15.6.2019\n2,4700,2.3.2019,16.6.19\n3,4700,2.3.2019,lost\n',
  )
  expect(mapping.fields).toMatchObject({ gluedOn: { dateFormat: 'D.M.YYYY' }, brokenOn: { dateFormat: 'D.M.YYYY' } })
  const open = await proposed('No,Load N,Glued\n1,4800,1.3.2019\n')
  expect(open.mapping.fields.gluedOn).toEqual({ column: 'Glued' })
})
