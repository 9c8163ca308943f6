import { expect, it } from 'vitest'
import { sizesOf } from '#renderer/parts/forms/overlapSizes.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const typed = { overlapLengthMm: '30', overlapWidthMm: '2 cm wide', areaMm2: '0' }

it('says what can be read and is a size, in mm and mm2', () => {
  expect(sizesOf(typed, quantitiesIn('SI'))).toEqual({ lengthMm: 30, widthMm: null, areaMm2: null })
  expect(sizesOf({ ...typed, areaMm2: '0.75' }, quantitiesIn('US')).areaMm2).toBeCloseTo(483.87, 2)
})
