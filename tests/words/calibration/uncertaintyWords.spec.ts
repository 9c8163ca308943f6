import { expect, it } from 'vitest'
import { uncertaintyText } from '#words/calibration/uncertaintyWords.ts'

it('writes an uncertainty to two decimals, and says so where there is none', () => {
  expect(uncertaintyText(0.4567)).toBe('±0.46 %')
  expect(uncertaintyText(null)).toBe('not known')
})
