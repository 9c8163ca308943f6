import { expect, it } from 'vitest'
import { readCapacity, readScale } from '#renderer/parts/bench/scaleForm.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const [SI, US] = [quantitiesIn('SI'), quantitiesIn('US')]

it('takes a rated load as printed on the cell', () => {
  expect(readCapacity('5 kN', US)).toEqual({ capacityN: 5000 })
  expect(readCapacity('500 kg', SI)).toEqual({ capacityN: 4903.325 })
})
it('takes a rated load in pounds-force as newtons', () => {
  // NIST SP 811, appendix B.8: 1 lbf = 4.448 222 N.
  expect(readCapacity('1000', US)).toEqual({ capacityN: expect.closeTo(4448.222, 3) })
})
it('takes nothing typed as not known', () => {
  expect(readCapacity('', SI)).toEqual({ capacityN: null })
  expect(readScale(' ', SI)).toEqual({ nPerCount: null })
})
it('says what is wrong with a rated load', () => {
  expect(readCapacity('5 mm', SI)).toEqual({
    error: '“5 mm” has a unit that does not fit here. Write the rated load in N.',
  })
  expect(readCapacity('-5', SI)).toEqual({ error: 'The rated load must be more than 0 N.' })
})
it('takes a negative scale, which is a cell wired in reverse, but not 0', () => {
  expect(readScale('-0.0125', SI)).toEqual({ nPerCount: -0.0125 })
  expect(readScale('0', SI)).toHaveProperty('error')
})
it('takes pounds-force per count as newtons per count', () => {
  // NIST SP 811, appendix B.8: 1 lbf = 4.448 222 N.
  expect(readScale('0.01', US)).toEqual({ nPerCount: expect.closeTo(0.04448222, 8) })
})
