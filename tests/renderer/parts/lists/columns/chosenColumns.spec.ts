import { expect, test } from 'vitest'
import { columnsShown, type ListColumn, withToggled } from '#renderer/parts/lists/columns/chosenColumns.ts'

const column = (key: string, weight: number, atFirst: boolean): ListColumn<object, string> => ({
  ...{ key, title: key, weight, atFirst },
  cell: () => key,
})
const all = [column('number', 10, true), column('lot', 20, false), column('peak', 30, true), column('state', 10, true)]
const shown = (chosen?: string[]) => columnsShown(all, chosen)

test('a list begins with its usual columns, together as wide as the table', () => {
  expect(shown().columns.map(({ key, width }) => [key, width])).toEqual([
    ['number', '20%'],
    ['peak', '60%'],
    ['state', '20%'],
  ])
  expect(shown().minWidth).toBeUndefined()
})

test('what was chosen is shown in the order of the list, and what names the row always', () => {
  expect(shown(['peak', 'lot']).columns.map(({ key }) => key)).toEqual(['number', 'lot', 'peak'])
  expect(shown(['colour']).columns.map(({ key }) => key)).toEqual(['number'])
})

test('a table of more columns than usual is given room', () => {
  expect(shown(['lot', 'peak', 'state']).minWidth).toMatch(/^\d+rem$/)
})

test('a column is chosen, and let go again', () => {
  expect(withToggled(all, undefined, 'lot')).toEqual(['number', 'lot', 'peak', 'state'])
  expect(withToggled(all, ['lot', 'state'], 'lot')).toEqual(['state'])
})
