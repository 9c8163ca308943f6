import { expect, test } from 'vitest'
import { listFilter } from '#contract/listQuery.ts'
import type { SavedFilter } from '#contract/settings/lists.ts'
import { isSameFilter, withFilterNamed, withoutFilter } from '#renderer/parts/lists/filter/savedFilters.ts'

const loft: SavedFilter = {
  ...{ name: 'in the loft', list: 'specimens', text: '', status: 'waiting' },
  filter: listFilter.parse({ exposure: 'loft' }),
}

test('a list shows a kept filter however it is sorted', () => {
  const view = { status: 'waiting', filter: { exposure: 'loft' }, sort: 'peakN', descending: true } as const
  expect(isSameFilter(loft, view)).toBe(true)
  expect(isSameFilter(loft, { ...view, text: 'epoxy' })).toBe(false)
})

test('a filter takes the place of one with its name in the same list alone', () => {
  const later = { ...loft, name: 'In the Loft', text: 'epoxy' }
  const other = { ...loft, list: 'breaks' as const }
  expect(withFilterNamed([loft, other], later)).toEqual([other, later])
  expect(withFilterNamed([loft], { ...loft, name: 'a first' }).map(({ name }) => name)).toEqual([
    'a first',
    'in the loft',
  ])
  expect(withoutFilter([loft, other], loft)).toEqual([other])
})
