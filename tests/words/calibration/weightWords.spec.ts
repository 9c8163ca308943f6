import { expect, it } from 'vitest'
import { loadText } from '#words/calibration/weightWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')

it('shows known loads to the hundredth, in the units of the program', () => {
  expect(loadText(147.084, force)).toBe('147.08\u00a0N')
  expect(loadText(4448.2216152605, quantitiesIn('US').force)).toBe('1000.0\u00a0lbf')
})
