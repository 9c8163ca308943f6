import { expect, it } from 'vitest'
import { neverAboveWords } from '#words/bench/cautions.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

it('names the rated load that is never to be exceeded, as far as it is known', () => {
  const { force } = quantitiesIn('SI')
  expect(neverAboveWords(5000, force)).toBe('Never above the rated load of 5000\u00a0N.')
  expect(neverAboveWords(null, force)).toBe('Never above the rated load of cell, press or frame.')
})
