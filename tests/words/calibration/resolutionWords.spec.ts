import { expect, test } from 'vitest'
import { resolutionWords } from '#words/calibration/resolutionWords.ts'

test('the resolution is explained by what it is, or by what the zero suggests', () => {
  expect(resolutionWords(null)).toBe(
    'The smallest step that can be read. The verified range starts at 200 times the resolution.',
  )
  expect(resolutionWords(2.5)).toMatch(/^Half the noise of the first zero reading is 2\.5\. /)
})
