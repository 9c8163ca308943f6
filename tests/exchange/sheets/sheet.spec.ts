import { describe, expect, it } from 'vitest'
import { columnLetters, columnOfLetters } from '#exchange/sheets/sheet.ts'

// The last column of a sheet program is XFD, the 16,384th (ECMA-376 part 1, 18.3.1.13)
const columns = [
  [0, 'A'],
  [25, 'Z'],
  [26, 'AA'],
  [701, 'ZZ'],
  [702, 'AAA'],
  [16_383, 'XFD'],
] as const

describe('letters over columns', () => {
  it.each(columns)('call column %i %s, and are found again', (column, letters) => {
    expect(columnLetters(column)).toBe(letters)
    expect(columnOfLetters(letters.toLowerCase())).toBe(column)
  })

  it('name no column beyond the last, and are nothing but letters', () => {
    expect(['XFE', 'A1', '', 'ABCD', 'Ä'].map(columnOfLetters)).toEqual([null, null, null, null, null])
  })
})
