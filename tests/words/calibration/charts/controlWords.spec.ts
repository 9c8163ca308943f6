import { describe, expect, it } from 'vitest'
import { controlWords } from '#words/calibration/charts/controlWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')

describe('words on a control chart', () => {
  it('give centre, limits and what lies outside', () => {
    expect(controlWords({ count: 17, centreN: 0.05, limitsN: [-0.25, 0.34], outside: ['check 17'] }, force)).toBe(
      '17 values. Centre +0.05\u00a0N. Limits −0.25\u00a0N to +0.34\u00a0N. Outside: check 17.',
    )
  })
  it('give one limit where there is no lower one, and say that none is outside', () => {
    expect(controlWords({ count: 1, centreN: null, limitsN: [null, 0.34], outside: [] }, force)).toBe(
      '1 value. Upper limit +0.34\u00a0N. None is outside.',
    )
  })
  it('say that there are no limits yet', () => {
    expect(controlWords({ count: 1, centreN: null, limitsN: null, outside: [] }, force)).toMatch(/no limits yet/)
  })
})
