import { expect, it } from 'vitest'
import { driftWords } from '#words/calibration/charts/driftWords.ts'

it('says of drift from when to when and how far', () => {
  expect(driftWords(['2031-04-01T12:00:00.000Z', '2032-04-01T12:00:00.000Z'], '0.1 %')).toBe(
    '2 calibrations, 1 Apr 2031 to 1 Apr 2032. The newest against the first: 0.1 %.',
  )
  expect(driftWords([], '')).toBe('There is no calibration.')
})
