import { expect, test } from 'vitest'
import { zeroMovedWords } from '#words/bench/zeroMovedWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

test('a zero that moved says by how much in the units shown, and what to do', () => {
  expect(zeroMovedWords({ by: 98, unit: 'N' }, quantitiesIn('SI').force)).toMatch(/98\.0\u00a0N above the one before/)
  expect(zeroMovedWords({ by: -98, unit: 'N' }, quantitiesIn('US').force)).toMatch(/22\.0\u00a0lbf below/)
  expect(zeroMovedWords({ by: 5000, unit: 'counts' }, quantitiesIn('SI').force)).toMatch(/5000 counts above/)
})
