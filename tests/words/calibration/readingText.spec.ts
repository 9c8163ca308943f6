import { expect, it } from 'vitest'
import { readingText } from '#words/calibration/readingText.ts'

it('writes counts whole, forces with their decimals, and means more finely', () => {
  expect(readingText(-812.4, 'counts')).toBe('−812')
  expect(readingText(812.44, 'counts', 1)).toBe('812.4')
  expect(readingText(1.23456, 'kN')).toBe('1.2346')
  expect(readingText(12.345, 'N')).toBe('12.35')
})
