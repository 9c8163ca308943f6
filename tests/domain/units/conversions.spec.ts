import { describe, expect, it } from 'vitest'
import {
  inchesFromMillimetres,
  kilogramsForceFromNewtons,
  kilonewtonsFromNewtons,
  megapascalsFromPsi,
  megapascalsPerPsi,
  millimetresFromInches,
  newtonsFromKilogramsForce,
  newtonsFromKilonewtons,
  newtonsFromPoundsForce,
  newtonsPerPoundForce,
  poundsForceFromNewtons,
  psiFromMegapascals,
  squareInchesFromSquareMillimetres,
  squareMillimetresFromSquareInches,
} from '#domain/units/conversions.ts'

describe('exact factors', () => {
  it('follow from the pound of 0.45359237 kg, the inch of 25.4 mm and standard gravity', () => {
    // International agreement of 1959 and CGPM 1901: integers, so that nothing is rounded on the way.
    const tenToThe13N = 45_359_237n * 980_665n
    expect(newtonsPerPoundForce).toBe(Number(tenToThe13N) / 1e13)
    expect(newtonsPerPoundForce).toBe(4.4482216152605)
    expect(newtonsFromPoundsForce(15_000)).toBeCloseTo(66_723.324228907, 8)
  })

  it('agree with the rounded ones of NIST SP 811 (4.448 222 and 6.894 757 E+03)', () => {
    expect(newtonsPerPoundForce.toFixed(6)).toBe('4.448222')
    expect((megapascalsPerPsi * 1e6).toFixed(3)).toBe('6894.757')
  })

  it('give 145.0377377302 psi for 1 MPa and 517.107 kPa for 75 psi', () => {
    // Exact arithmetic from the definitions: 1e6 x 0.0254^2 / 4.4482216152605.
    expect(psiFromMegapascals(1)).toBeCloseTo(145.0377377302, 9)
    expect(megapascalsFromPsi(75) * 1000).toBeCloseTo(517.107, 3)
  })

  it('give 1935.48 mm² for the 2 in x 1.5 in of a block', () => {
    expect(squareMillimetresFromSquareInches(3)).toBeCloseTo(1935.48, 10)
  })
})

describe('there and back', () => {
  const pairs: [string, (x: number) => number, (x: number) => number][] = [
    ['lbf', poundsForceFromNewtons, newtonsFromPoundsForce],
    ['kgf', kilogramsForceFromNewtons, newtonsFromKilogramsForce],
    ['kN', kilonewtonsFromNewtons, newtonsFromKilonewtons],
    ['in', inchesFromMillimetres, millimetresFromInches],
    ['in²', squareInchesFromSquareMillimetres, squareMillimetresFromSquareInches],
    ['psi', psiFromMegapascals, megapascalsFromPsi],
  ]
  it.each(pairs)('%s loses no more than the last bits', (_unit, there, back) => {
    for (const value of [1e-9, 0.1, 1, 12_345.678, 1e9]) expect(back(there(value)) / value).toBeCloseTo(1, 14)
  })
})
