import { expect, it } from 'vitest'
import { signedForce } from '#words/calibration/charts/signedForce.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

it('writes a force with its sign in the chosen unit', () => {
  expect(signedForce(4.4482216152605, quantitiesIn('US').force)).toBe('+1.00\u00a0lbf')
})
