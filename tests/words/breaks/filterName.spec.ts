import { expect, test } from 'vitest'
import { filterName } from '#words/breaks/filterName.ts'

// SAE J211-1 and ISO 6487 list 100, 300 and 1000 Hz for the first three; the fourth is 1650 Hz there and nominally 5/3 of its class.
test.each([
  [60, '100 Hz'],
  [180, '300 Hz'],
  [600, '1000 Hz'],
  [1000, '1667 Hz'],
] as const)('names CFC %d with its standard and its −3 dB point of %s', (frequencyClass, halfPower) => {
  expect(filterName({ kind: 'cfc', frequencyClass })).toBe(
    `CFC ${frequencyClass} (SAE J211-1, ISO 6487), forward and backward, −3 dB at ${halfPower}`,
  )
})

test('names the others with their figures, without digits that say nothing', () => {
  expect(filterName({ kind: 'butterworth', cutoffHz: 12.5 })).toContain('−3 dB at 12.5 Hz')
  expect(filterName({ kind: 'moving-average', windowS: 0.1 + 0.2 })).toBe('Moving average over 0.3 s, centred')
})
