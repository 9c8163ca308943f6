import { expect, it } from 'vitest'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'

it('names every record that a list had to leave out', () => {
  expect(
    unreadableTrouble([
      { record: 'specimen 12', because: 'its area is below 0' },
      { record: 'specimen 40', because: 'it has no number' },
    ])?.message,
  ).toBe(
    '2 records of this page cannot be read and had to be left out: specimen 12 (its area is below 0); specimen 40 (it has no number).',
  )
})

it('says nothing of a list that shows all', () => {
  expect(unreadableTrouble(undefined)).toBeNull()
  expect(unreadableTrouble([])).toBeNull()
})
