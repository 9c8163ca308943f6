import { expect, it } from 'vitest'
import { selectedBreaks, setSelectedBreaks } from '#renderer/parts/lists/selectionStore.ts'

it('keeps what was selected last, each break once and in order', () => {
  expect(selectedBreaks()).toEqual([])
  setSelectedBreaks([7, 3, 7])
  expect(selectedBreaks()).toEqual([7, 3])
  setSelectedBreaks([])
  expect(selectedBreaks()).toEqual([])
})
