import { expect, it } from 'vitest'
import { sheetView } from '#contract/specimens/sheetView.ts'
import { readSheetCsv } from '#exchange/csv/sheetCsv.ts'
import { lookAtSheet } from '#exchange/import/lookAtSheet.ts'
import { readXlsx } from '#exchange/sheets/readXlsx.ts'
import { type Cell, textCell } from '#exchange/sheets/sheet.ts'
import { cpuRatio } from '#tests/fakes/cpuRatio.ts'
import { drawnWorkbook } from '../sheets/drawnWorkbook.ts'

const layout = { delimiter: null, encoding: null, headerRow: 1 }
const csv = async (text: string) => ({ sheets: [], sheet: await readSheetCsv('a.csv', Buffer.from(text), layout) })
const text = (cell: string, words: string) => `<c r="${cell}" t="inlineStr"><is><t>${words}</t></is></c>`

it('does not go through the empty columns before a lone cell', async () => {
  const sheets = (column: number) => {
    const cells: (Cell | undefined)[] = []
    cells[column] = textCell('1')
    const rows = Array.from({ length: 300 }, (_, i) => ({ row: i + 1, cells }))
    return { sheets: [], sheet: { name: null, rows, lastRow: 300, text: null } }
  }
  // Through them all it is six hundred
  expect(await cpuRatio(20, 16_383, async (column) => void (await lookAtSheet(sheets(column), 0, 'ab')))).toBeLessThan(
    60,
  )
})

it('shows merged cells, formulas, failed ones and colours as such, and counts them', async () => {
  const bytes = await drawnWorkbook({
    stylesXml:
      '<fills><fill/><fill><patternFill patternType="solid"><fgColor rgb="FFFFFF00"/></patternFill></fill></fills><cellXfs><xf/><xf fillId="1"/></cellXfs>',
    sheetXml: `<sheetData><row r="1">${text('A1', 'Adhesive')}${text('B1', 'Load')}</row>
      <row r="2">${text('A2', 'casein C1')}<c r="B2" s="1"><v>450</v></c></row>
      <row r="3"><c r="B3"><f>B2+1</f><v>451</v></c></row>
      <row r="6" hidden="1">${text('A6', 'epoxy')}<c r="B6" t="e"><f>1/0</f><v>#DIV/0!</v></c></row></sheetData>
      <mergeCells><mergeCell ref="A2:A3"/></mergeCells>`,
  })
  const view = await lookAtSheet(await readXlsx('a.xlsx', bytes, null), null, 'ab')
  expect(sheetView.parse(view)).toEqual(view)
  expect(view).toMatchObject({
    headerRow: 1,
    filledRows: 3,
    emptyRows: 2,
    hiddenRows: 1,
    merged: 1,
    formulas: 2,
    errors: 1,
    sheet: 'Sheet 1',
  })
  expect(view.columns[1]).toMatchObject({ letters: 'B', heading: 'Load', name: 'Load', filled: 3 })
  expect(view.columns[1]!.fills).toEqual([
    { fill: null, count: 2 },
    { fill: 'FFFF00', count: 1 },
  ])
  const third = view.rows.find(({ row }) => row === 3)!
  expect(third.cells).toMatchObject([
    { text: 'casein C1', merged: true },
    { text: '451', formula: true, merged: false },
  ])
})

it.each([
  ['Adhesive,Load\nC1,450\n', 1],
  ['Results of the loft,\n,\nAdhesive,Load\nC1,450\n', 3],
  ['C1,450\nC1,460\n', 0],
  ['one,two\nC1,450\n', 1],
])('finds the headings of %j in row %i', async (table, headerRow) => {
  expect((await lookAtSheet(await csv(table), null, '')).headerRow).toBe(headerRow)
})

it('takes the row of the headings that it is told', async () => {
  const view = await lookAtSheet(await csv('Adhesive,Load\nC1,450\n'), 0, '')
  expect(view).toMatchObject({ headerRow: 0, filledRows: 2, columns: [{ heading: '', name: 'A' }, { name: 'B' }] })
})

it('names a column by its letters where its heading stands twice, and by its number where those are a heading', async () => {
  const view = await lookAtSheet(await csv('Load,load,,D,E\n1,2,3,4,5\n'), 1, '')
  expect(view.columns.map(({ name }) => name)).toEqual(['A', 'B', 'C', 'D', 'E'])
  const odd = await lookAtSheet(await csv('Load,A,Load\n1,2,3\n'), 1, '')
  expect(odd.columns.map(({ name }) => name)).toEqual([1, 'A', 'C'])
})

it('shows the first rows and columns of a large table and counts all', async () => {
  const rows = Array.from({ length: 700 }, (_, row) => `C1,${row}`)
  const view = await lookAtSheet(await csv(`Adhesive,Load\n${rows.join('\n')}\n`), null, '')
  expect(view.filledRows).toBe(700)
  expect(view.rows.length).toBeLessThan(100)
  expect(view.columns[0]!.filled).toBe(700)
})

it('stops when it is told to', async () => {
  const rows = Array.from({ length: 700 }, (_, row) => `C1,${row}`)
  const controller = new AbortController()
  const looking = lookAtSheet(await csv(`Adhesive,Load\n${rows.join('\n')}\n`), null, '', controller.signal)
  controller.abort(new Error('stopped'))
  await expect(looking).rejects.toThrow('stopped')
})
