import { describe, expect, it } from 'vitest'
import { pagesOfRows, rowAfterKey, rowsInSight, scrollToRow } from '#renderer/widgets/tables/virtualRows.ts'

describe('rowsInSight', () => {
  it('builds only what is in sight and a little more, in a list of ten thousand', () => {
    expect(rowsInSight(40 * 5000, 600, 40, 10_000, 10)).toEqual({ first: 4990, last: 5025 })
  })
  it('stays within the list', () => {
    expect(rowsInSight(0, 600, 40, 3, 10)).toEqual({ first: 0, last: 3 })
    expect(rowsInSight(99_999, 600, 40, 20, 10)).toEqual({ first: 20, last: 20 })
    expect(rowsInSight(0, 600, 40, 0, 10)).toEqual({ first: 0, last: 0 })
  })
})

describe('pagesOfRows', () => {
  it('names every page that holds one of the rows', () => {
    expect(pagesOfRows(95, 205, 100)).toEqual([0, 100, 200])
    expect(pagesOfRows(100, 200, 100)).toEqual([100])
  })
})

describe('scrollToRow', () => {
  it('moves only as far as it must', () => {
    expect(scrollToRow(2, 0, 400, 40)).toBe(0)
    expect(scrollToRow(12, 0, 400, 40)).toBe(120)
    expect(scrollToRow(1, 200, 400, 40)).toBe(40)
  })
})

describe('rowAfterKey', () => {
  it.each([
    ['ArrowDown', 4, 5],
    ['ArrowUp', 0, 0],
    ['PageDown', 95, 99],
    ['Home', 50, 0],
    ['End', 50, 99],
  ])('%s from row %d leads to row %d', (key, from, to) => expect(rowAfterKey(key, from, 100, 10)).toBe(to))
  it('leaves other keys alone', () => expect(rowAfterKey('a', 0, 100, 10)).toBeNull())
  it('has nowhere to go in an empty list', () => expect(rowAfterKey('ArrowDown', 0, 0, 10)).toBeNull())
})
