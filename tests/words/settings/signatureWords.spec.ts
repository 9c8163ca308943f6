import { expect, test } from 'vitest'
import { signedAsWords } from '#words/settings/signatureWords.ts'

test('entries are said to be recorded in a name, or in none', () => {
  expect(signedAsWords('bench 2')).toBe('Recorded as bench 2.')
  expect(signedAsWords('')).toBe('Recorded without a name.')
})
