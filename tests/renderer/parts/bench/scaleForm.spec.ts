import { expect, it } from 'vitest'
import { readCapacity, readScale } from '#renderer/parts/bench/scaleForm.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

it('takes a rated load in pounds-force as newtons', () => {
  const { factor, unit } = quantitiesIn('US').force
  // NIST SP 811, appendix B.8: 1 lbf = 4.448 222 N.
  expect(readCapacity('1000', factor, unit)).toEqual({ capacityN: expect.closeTo(4448.222, 3) })
})
it('takes nothing typed as not known', () => {
  expect(readCapacity('', 1, 'N')).toEqual({ capacityN: null })
  expect(readScale(' ')).toEqual({ nPerCount: null })
})
it('says what is wrong with a rated load', () => {
  expect(readCapacity('5 kN', 1, 'N')).toEqual({ error: '“5 kN” is not a number. Write the rated load in N.' })
  expect(readCapacity('-5', 1, 'N')).toEqual({ error: 'The rated load must be more than 0 N.' })
})
it('takes a negative scale, which is a cell wired in reverse, but not 0', () => {
  expect(readScale('-0.0125')).toEqual({ nPerCount: -0.0125 })
  expect(readScale('0')).toHaveProperty('error')
})
