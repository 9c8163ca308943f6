import { expect, it } from 'vitest'
import { lineFormatName } from '#contract/bench/source.ts'
import { lineFormatWords, lineFormatWorth } from '#words/bench/lineFormatWords.ts'

it('names a format, and its columns where there are any', () => {
  expect(lineFormatWords({ name: 'number', columns: [] })).toBe('one number a line')
  expect(lineFormatWords({ name: 'checked', columns: [] })).toBe('checked lines with sequence and time')
  expect(lineFormatWords({ name: 'crc', columns: [] })).toBe('lines with a CRC, sequence and time')
  expect(lineFormatWords({ name: 'columns', columns: [] })).toBe('columns')
  expect(lineFormatWords({ name: 'columns', columns: ['time_ms', 'counts'] })).toBe('columns: time_ms, counts')
})

it('says of each format what it does not notice, and of none that it notices all damage', () => {
  const worth = lineFormatName.options.map(lineFormatWorth)
  expect(new Set(worth).size).toBe(worth.length)
  // Worked out in lineCheck.spec.ts.
  expect(lineFormatWorth('checked')).toContain('one time in 13')
  expect(lineFormatWorth('crc')).toContain('one in 65,000')
})
