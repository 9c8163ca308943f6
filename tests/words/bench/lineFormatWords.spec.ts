import { expect, it } from 'vitest'
import { lineFormatWords } from '#words/bench/lineFormatWords.ts'

it('names a format, and its columns where there are any', () => {
  expect(lineFormatWords({ name: 'number', columns: [] })).toBe('one number a line')
  expect(lineFormatWords({ name: 'checked', columns: [] })).toBe('checked lines with sequence and time')
  expect(lineFormatWords({ name: 'columns', columns: [] })).toBe('columns')
  expect(lineFormatWords({ name: 'columns', columns: ['time_ms', 'counts'] })).toBe('columns: time_ms, counts')
})
