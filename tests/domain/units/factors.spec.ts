import { describe, expect, it } from 'vitest'
import {
  kilogramsPerM3PerPoundPerFt3,
  kilogramsPerOunce,
  megapascalsPerPsi,
  newtonsPerKilogramForce,
  newtonsPerPoundForce,
  squareMillimetresPerSquareInch,
  standardGravityMPerS2,
} from '#domain/units/factors.ts'

describe('exact factors', () => {
  it('follow from the pound of 0.45359237 kg, the inch of 25.4 mm and standard gravity', () => {
    // International agreement of 1959 and CGPM 1901: integers, so that nothing is rounded on the way.
    const tenToThe13N = 45_359_237n * 980_665n
    expect(newtonsPerPoundForce).toBe(Number(tenToThe13N) / 1e13)
    expect(newtonsPerPoundForce).toBe(4.4482216152605)
    expect(15_000 * newtonsPerPoundForce).toBeCloseTo(66_723.324228907, 8)
    expect(newtonsPerKilogramForce).toBe(standardGravityMPerS2)
  })

  it('agree with the rounded ones of NIST SP 811 (4.448 222 and 6.894 757 E+03)', () => {
    expect(newtonsPerPoundForce.toFixed(6)).toBe('4.448222')
    expect((megapascalsPerPsi * 1e6).toFixed(3)).toBe('6894.757')
  })

  it('give 145.0377377302 psi for 1 MPa and 517.107 kPa for 75 psi', () => {
    // Exact arithmetic from the definitions: 1e6 x 0.0254^2 / 4.4482216152605.
    expect(1 / megapascalsPerPsi).toBeCloseTo(145.0377377302, 9)
    expect(75 * megapascalsPerPsi * 1000).toBeCloseTo(517.107, 3)
  })

  it('give 1935.48 mm² for the 2 in x 1.5 in of a block', () => {
    expect(3 * squareMillimetresPerSquareInch).toBeCloseTo(1935.48, 10)
  })

  it('give the ounce and the pound per cubic foot of NIST SP 811 (2.834 952 E-02 kg and 1.601 846 E+01 kg/m³)', () => {
    expect(kilogramsPerOunce.toPrecision(7)).toBe('0.02834952')
    expect(kilogramsPerM3PerPoundPerFt3.toPrecision(7)).toBe('16.01846')
  })
})
