import { expect, it } from 'vitest'
import { breakSelection } from '#renderer/parts/lists/selectionStore.ts'

it('keeps what was selected last, each break once and in order', () => {
  expect(breakSelection.read()).toEqual([])
  breakSelection.set([7, 3, 7])
  expect(breakSelection.read()).toEqual([7, 3])
  breakSelection.set([])
  expect(breakSelection.read()).toEqual([])
})
