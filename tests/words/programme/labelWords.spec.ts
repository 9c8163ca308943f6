import { expect, it } from 'vitest'
import { headOnSheet, labelsTitle, sheetTitle } from '#words/programme/labelWords.ts'

it('calls sheets by their first number and their last', () => {
  expect(labelsTitle('10015', '10736')).toBe('Labels 10015 to 10736')
  expect(labelsTitle('10015', '10015')).toBe('Label 10015')
  expect(sheetTitle('Label 10015', 1, 1)).toBe('Label 10015, page 1 of 1')
})

it('writes the head of the chain as the command takes it', () => {
  expect(headOnSheet({ count: 12, hash: 'ab' })).toBe('End of the chain: 12:ab')
})
