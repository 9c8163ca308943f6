import { describe, expect, it } from 'vitest'
import { fProbability, fQuantile, fUpperTail } from '#domain/numbers/distributions/fisherF.ts'

const relativeError = (value: number, expected: number) => Math.abs(value / expected - 1)

describe('F distribution', () => {
  it('agrees with R pf to 1e-11', () => {
    // R 4.2.2: pf(0.8107, 17, 20); pf(1.02, 1800, 2200); pf(214.7469, 18, 20, lower = FALSE)
    expect(relativeError(fProbability(0.8107, 17, 20), 0.3338045622067627)).toBeLessThan(1e-11)
    expect(relativeError(fProbability(1.02, 1800, 2200), 0.6708152857915419)).toBeLessThan(1e-11)
    expect(relativeError(fUpperTail(214.7469, 18, 20), 5.50372339013183e-19)).toBeLessThan(1e-11)
  })

  it('agrees with R in a tail of 1e-130, to 1e-9', () => {
    // R: pf(185330865.995752, 2, 37, lower = FALSE); the argument is known to 15 digits and enters with power 18.5.
    expect(relativeError(fUpperTail(185330865.995752, 2, 37), 3.059445382858014e-130)).toBeLessThan(1e-9)
  })

  // R: qf(.95, 9, 90); qf(.95, 18, 20); qf(.01, 3, 7); qf(.999, 1, 1). Relative tolerance 1e-11;
  // 1.985595 is also the critical value of NIST/SEMATECH e-Handbook 1.3.5.10.
  it.each([
    [0.95, 9, 90, 1.985594963730501],
    [0.95, 18, 20, 2.151124427121831],
    [0.01, 3, 7, 0.03613800894092489],
    [0.999, 1, 1, 405284.0679028482],
  ])('quantile %d with %d and %d degrees of freedom agrees with R qf', (p, df1, df2, expected) => {
    expect(relativeError(fQuantile(p, df1, df2), expected)).toBeLessThan(1e-11)
  })

  it('has its ends at 0 and infinity and refuses degrees of freedom that are not positive', () => {
    expect(fUpperTail(-1, 2, 3)).toBe(1)
    expect(fUpperTail(Number.POSITIVE_INFINITY, 2, 3)).toBe(0)
    expect(() => fProbability(1, 0, 3)).toThrow(RangeError)
  })
})
