import { expect, test } from 'vitest'
import { classReasonWords } from '#words/calibration/classWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')
const good = { forceN: 2000, class: '0.5', q: 0.1, b: 0.1, v: null, f0: 0, a: 0.1 } as const
const poor = { ...good, forceN: 1000, class: '3', q: 0.2, b: 2.4, f0: 0.25 } as const

test('a class that is worse than that of most steps names the step and the errors that give it', () => {
  expect(classReasonWords([poor, good], '3', force)).toBe(
    'because of the step at 1000.0\u00a0N: repeatability b, zero f0',
  )
  expect(classReasonWords([{ ...poor, forceN: 500 }, poor, good], '3', force)).toMatch(
    /^because of 2 steps, the first at 500.00\u00a0N/,
  )
})
test('a class that all steps have needs no reason', () => {
  expect(classReasonWords([good, good], '0.5', force)).toBe('')
})
