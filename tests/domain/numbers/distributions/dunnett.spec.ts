import { describe, expect, it } from 'vitest'
import { dunnettQuantile, dunnettUpperTail } from '#domain/numbers/distributions/dunnett.ts'
import { tQuantile } from '#domain/numbers/distributions/studentT.ts'

const equal = (groups: number) => ({ reference: 6, groups: new Array<number>(groups).fill(6) })

describe('the largest of several t values against one reference', () => {
  // Dunnett, Biometrics 20 (1964), two-sided, equal sizes (2.76, 2.54, 3.71, 3.96); four decimals by quadrature in R 4.2.2. Those of 1955
  // are conservative.
  it.each([
    [0.05, 3, 10, 2.759],
    [0.05, 3, 20, 2.5403],
    [0.05, 4, 60, 2.5084],
    [0.01, 4, 12, 3.7095],
    [0.01, 7, 12, 3.9605],
  ])('has at %d with %d groups and %d degrees of freedom the critical value of 1964', (upper, groups, df, t) => {
    expect(dunnettQuantile(upper, equal(groups), df)).toBeCloseTo(t, 4)
  })

  it('is Student t for a single group', () => {
    expect(dunnettQuantile(0.05, { reference: 3, groups: [9] }, 10)).toBeCloseTo(-tQuantile(0.025, 10), 9)
  })

  it('stays Student t where the reference has one block and the group two hundred', () => {
    // 2 pt(-t, 10) of R 4.2.2
    for (const [t, p] of [
      [1, 0.340893132302059],
      [3, 0.01334365502257],
    ] as const)
      expect(dunnettUpperTail(t, { reference: 1, groups: [200] }, 10)).toBeCloseTo(p, 12)
  })

  it('keeps its digits with many large groups beside a reference of few blocks', () => {
    // Double quadrature in scipy 1.17.1 (400 Gauss-Legendre points over ln s, steps of 0.002 over z)
    const groups = Array.from({ length: 20 }, (_, i) => 100 + 5 * i)
    expect(dunnettUpperTail(1, { reference: 1, groups }, 2931)).toBeCloseTo(0.3983260205413752, 10)
    expect(dunnettUpperTail(2.5, { reference: 3, groups }, 2933)).toBeCloseTo(0.0247504431310565, 10)
  })

  it('has the p values of the blood counts of 1955, with groups of unlike size', () => {
    // R 4.2.2 multcomp and scipy 1.17.1 stats.dunnett: 0.6201, 0.0058
    const design = { reference: 6, groups: [4, 5] }
    expect(dunnettUpperTail(0.85703, design, 12)).toBeCloseTo(0.6201, 4)
    expect(dunnettUpperTail(3.69375, design, 12)).toBeCloseTo(0.0058, 4)
  })

  it('is certain above 0, and refuses no group', () => {
    expect(dunnettUpperTail(0, equal(2), 5)).toBe(1)
    expect(() => dunnettUpperTail(1, { reference: 5, groups: [] }, 5)).toThrow(RangeError)
    expect(() => dunnettQuantile(1, equal(2), 5)).toThrow(RangeError)
  })
})
