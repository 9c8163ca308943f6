import { describe, expect, it } from 'vitest'
import { shearStrengthMPa } from '#domain/strength/strength.ts'
import { megapascalsPerPsi, newtonsPerPoundForce, squareMillimetresPerSquareInch } from '#domain/units/factors.ts'

describe('shear strength', () => {
  it('is 10 N/mm² for 2000 N on the 10 mm x 20 mm lap of EN 205', () => {
    // EN 205, tau = Fmax / (l2 b); dimensions from memory, arithmetic exact.
    expect(shearStrengthMPa(2000, 10 * 20)).toBe(10)
  })

  it.each([
    // Exact arithmetic on the 3 in² of a D905 block (specimen size from memory).
    [10_000, 5.166677, 749.363],
    [40_000, 20.666708, 2997.453],
  ])('of %i N on 3 in² is %f MPa or %f psi', (forceN, strengthMPa, strengthPsi) => {
    const strength = shearStrengthMPa(forceN, 3 * squareMillimetresPerSquareInch)
    expect(strength).toBeCloseTo(strengthMPa, 6)
    expect(strength / megapascalsPerPsi).toBeCloseTo(strengthPsi, 3)
  })

  it('of 10,000 lbf on 3 in² is 3333.333 psi or 22.982524 MPa', () => {
    const strength = shearStrengthMPa(10_000 * newtonsPerPoundForce, 3 * squareMillimetresPerSquareInch)
    expect(strength).toBeCloseTo(22.982524, 6)
    expect(strength / megapascalsPerPsi).toBeCloseTo(3333.333, 3)
  })

  it('cannot be had without an area', () => {
    expect(() => shearStrengthMPa(1, 0)).toThrow('shearStrengthMPa requires an area above 0')
    expect(() => shearStrengthMPa(Number.NaN, 1)).toThrow(RangeError)
  })
})
