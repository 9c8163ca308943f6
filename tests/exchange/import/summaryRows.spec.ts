import { expect, it } from 'vitest'
import { summaryRows } from '#exchange/import/summaryRows.ts'
import { type SheetRow, textCell } from '#exchange/sheets/sheet.ts'

const rowsOf = (...names: (string | undefined)[][]): SheetRow[] =>
  names.map((cells, index) => ({
    row: index + 2,
    cells: cells.map((text) => (text === undefined ? undefined : textCell(text))),
  }))
const found = (rows: SheetRow[], naming: number[] = []) => [...summaryRows(rows, naming).keys()]

it.each(['Mean', 'average', 'Total:', 'SD (n-1)', 'St. dev.', 'CV %', 'Average of 8', 'Sum', 'Ø', 'Median', 'C.o.V.'])(
  'takes “%s” for a row that sums up others',
  (name) => expect(summaryRows(rowsOf(['C1-1'], [name]), [])).toEqual(new Map([[3, name]])),
)

it.each(['Meanwood 3', 'Totara', 'SD-7', 'n', 'Max', 'Summer casein', 'C1-1', '12'])(
  'takes “%s” alone for a block',
  (name) => expect(found(rowsOf([name]))).toEqual([]),
)

it('takes what may be a name for such a row only beside one', () => {
  expect(found(rowsOf(['C1-1'], ['Min'], ['Max'], ['Mean'], ['n'], ['Max 2']))).toEqual([3, 4, 5, 6])
})

it('looks at what stands first, and in the columns of names', () => {
  const rows = rowsOf([undefined, 'Mean'], ['casein', 'x', 'Mean'])
  expect(found(rows)).toEqual([2])
  expect(found(rows, [2])).toEqual([2, 3])
})
