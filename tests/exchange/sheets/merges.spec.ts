import { describe, expect, it } from 'vitest'
import { applyMerges, readMerge } from '#exchange/sheets/merges.ts'
import { textCell } from '#exchange/sheets/sheet.ts'

const rows = [
  { row: 2, cells: [textCell('a'), textCell('1')] },
  { row: 4, cells: [undefined, textCell('2')] },
  { row: 7, cells: [undefined, textCell('3')] },
]

describe('merged cells', () => {
  it('reach over rows, or say nothing', () => {
    expect(readMerge('B2:D5')).toEqual({ firstRow: 2, lastRow: 5, column: 1 })
    expect(['B2:D2', 'B2', 'nonsense', 'B5:B2'].map(readMerge)).toEqual([null, null, null, null])
  })

  it('give their value to the rows that they cover and that hold something', () => {
    const filled = applyMerges('a.xlsx', rows, [{ firstRow: 2, lastRow: 1_000_000, column: 0 }])
    expect(filled.map(({ row, cells }) => [row, cells[0]?.text])).toEqual([
      [2, 'a'],
      [4, 'a'],
      [7, 'a'],
    ])
    expect(applyMerges('a.xlsx', rows, [{ firstRow: 2, lastRow: 4, column: 0 }])[2]!.cells[0]).toBeUndefined()
  })

  it('leave the rows that were given as they were', () => {
    applyMerges('a.xlsx', rows, [{ firstRow: 2, lastRow: 9, column: 0 }])
    expect(rows[1]!.cells[0]).toBeUndefined()
  })

  it('are refused where they cover one another without end', () => {
    const many = Array.from({ length: 3000 }, (_, i) => ({ row: i + 1, cells: [textCell('a')] }))
    const merges = Array.from({ length: 3000 }, () => ({ firstRow: 1, lastRow: 3000, column: 0 }))
    expect(() => applyMerges('a.xlsx', many, merges)).toThrow('cover one another')
  })
})
