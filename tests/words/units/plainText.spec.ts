import { expect, it } from 'vitest'
import { plainText } from '#words/units/plainText.ts'

it('writes numbers and units with characters that every terminal has', () => {
  expect(plainText('−12\u2009345.6\u00a0N ± 0.5\u00a0N, 2 × the “most”, –')).toBe(
    '-12345.6 N +- 0.5 N, 2 x the “most”, -',
  )
})
