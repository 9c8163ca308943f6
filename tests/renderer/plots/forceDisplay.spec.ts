import { expect, it } from 'vitest'
import { displayOf } from '#renderer/plots/forceDisplay.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

it('draws forces in the units of the program, and counts as they came', () => {
  // 1 lbf is 4.4482216152605 N exactly. Source: NIST SP 811 (2008), appendix B.8.
  expect(displayOf(quantitiesIn('US'), false)).toMatchObject({ unit: 'lbf' })
  expect(displayOf(quantitiesIn('US'), false).factor * 4.4482216152605).toBeCloseTo(1, 12)
  expect(displayOf(quantitiesIn('US'), true)).toMatchObject({ factor: 1, unit: 'counts' })
  expect(displayOf(quantitiesIn('SI'), false)).toMatchObject({ factor: 1, unit: 'N' })
})
it('writes no zeros at the end of what stands on an axis', () => {
  const { format } = displayOf(quantitiesIn('SI'), false)
  expect([format(500), format(0.25), format(1 / 3)]).toEqual(['500', '0.25', '0.333'])
})
