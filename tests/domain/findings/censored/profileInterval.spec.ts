import { describe, expect, it } from 'vitest'
import { censoredFit } from '#domain/findings/censored/censoredFit.ts'
import { locationScale } from '#domain/findings/censored/locationScale.ts'
import { maximumLikelihood } from '#domain/findings/censored/maximumLikelihood.ts'
import { deviationAllowed, profileInterval } from '#domain/findings/censored/profileInterval.ts'
import { chiSquareQuantile } from '#domain/numbers/distributions/chiSquare.ts'
import { handbookGroups } from '../knownStudies.ts'

describe('an interval from the profile likelihood', () => {
  it('of a normal mean is that of Student', () => {
    // R 4.2.2: t.test of the first group of NIST/SEMATECH e-Handbook 7.4.7.1
    const fit = censoredFit({ failed: [...handbookGroups[0]!.values], censored: [] }, 'normal', 0.95)
    expect(fit).toMatchObject({
      meanLowMPa: expect.closeTo(3.952888, 5),
      meanHighMPa: expect.closeTo(6.727112, 5),
    })
  })

  it('allows what chi-square does for many failures, and more for few', () => {
    expect(deviationAllowed(1e6, 0.95)).toBeCloseTo(chiSquareQuantile(0.95, 1), 4)
    expect(deviationAllowed(5, 0.95)).toBeGreaterThan(1.3 * chiSquareQuantile(0.95, 1))
  })

  it('has no end for a single failure', () => {
    const values = { failed: [3], censored: [4, 5] }
    const estimate = maximumLikelihood(values, locationScale.normal)!
    const number = { value: estimate.mu, se: 1, location: (value: number) => value }
    expect(profileInterval(values, locationScale.normal, estimate, number, 0.95)).toEqual({ low: null, high: null })
  })

  it('is none where the values lie so far apart that arithmetic loses the likelihood', () => {
    for (const distribution of ['normal', 'lognormal', 'weibull'] as const)
      for (const odd of [5e-324, 1e-300, 1e300])
        expect(() => censoredFit({ failed: [odd, 5, 6, 7], censored: [] }, distribution, 0.95)).not.toThrow()
  })

  it('holds the estimate, and is wider at a higher confidence', () => {
    const strengths = { failed: [6, 7, 7.5, 8, 9], censored: [8, 9.5] }
    const [narrow, wide] = [0.8, 0.99].map((confidence) => censoredFit(strengths, 'weibull', confidence))
    if (typeof narrow !== 'object' || typeof wide !== 'object') throw new Error('no fit')
    expect(wide.b10LowMPa!).toBeLessThan(narrow.b10LowMPa!)
    expect(narrow.b10LowMPa!).toBeLessThan(narrow.b10MPa)
    expect(narrow.b10MPa).toBeLessThan(narrow.b10HighMPa!)
    expect(narrow.b10HighMPa!).toBeLessThan(wide.b10HighMPa!)
    expect(wide.meanHighMPa ?? Number.POSITIVE_INFINITY).toBeGreaterThan(narrow.meanHighMPa!)
  })
})
