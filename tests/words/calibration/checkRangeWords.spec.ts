import { expect, test } from 'vitest'
import { checkRangeWords } from '#words/calibration/checkRangeWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')

test('a check weight outside the verified range says so, and on which side', () => {
  expect(checkRangeWords(98.1, [981, 4906], force)).toMatch(/98\.10\u00a0N, below the verified range of 981/)
  expect(checkRangeWords(5000, [981, 4906], force)).toMatch(/above the verified range/)
  expect(checkRangeWords(98.1, null, force)).toMatch(/no verified range/)
})
test('one inside it says nothing', () => {
  expect(checkRangeWords(981, [981, 4906], force)).toBeNull()
  expect(checkRangeWords(4906, [981, 4906], force)).toBeNull()
})
