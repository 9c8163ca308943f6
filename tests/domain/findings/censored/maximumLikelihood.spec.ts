import { describe, expect, it } from 'vitest'
import { locationScale } from '#domain/findings/censored/locationScale.ts'
import { logLikelihoodAt, maximumLikelihood, noMaximum } from '#domain/findings/censored/maximumLikelihood.ts'

// NIST/SEMATECH e-Handbook 8.4.1.3: ten failures, ten units unfailed at 500.
const handbook = {
  failed: [54, 187, 216, 240, 244, 335, 361, 373, 375, 386].map(Math.log),
  censored: new Array<number>(10).fill(Math.log(500)),
}

describe('the largest likelihood', () => {
  it('of the handbook has location, scale and standard errors of survreg', () => {
    // R 4.2.2 survreg: eta 606.527558, beta 1.72079726, SE of log eta 0.2059439, of log scale 0.2918128
    const { mu, logSigma, covariance } = maximumLikelihood(handbook, locationScale.weibull)!
    expect(Math.exp(mu)).toBeCloseTo(606.527558, 5)
    expect(Math.exp(-logSigma)).toBeCloseTo(1.72079726, 7)
    expect(Math.sqrt(covariance.mu)).toBeCloseTo(0.2059439, 6)
    expect(Math.sqrt(covariance.logSigma)).toBeCloseTo(0.2918128, 6)
  })

  it.each(['weibull', 'lognormal', 'normal'] as const)('is larger than all around it (%s)', (name) => {
    const model = locationScale[name]
    const { mu, logSigma, logLikelihood } = maximumLikelihood(handbook, model)!
    for (const [dMu, dLog] of [
      [0.01, 0],
      [-0.01, 0],
      [0, 0.01],
      [0, -0.01],
    ] as const)
      expect(logLikelihoodAt(handbook, model, mu + dMu, logSigma + dLog)).toBeLessThan(logLikelihood)
  })

  it.each([0.8, 12, 120])('is found for a shape of %d', (shape) => {
    // The places that share out a Weibull distribution evenly.
    const failed = Array.from({ length: 12 }, (_, i) => Math.log(8) + Math.log(-Math.log1p(-(i + 0.5) / 12)) / shape)
    const { logSigma } = maximumLikelihood({ failed, censored: [] }, locationScale.weibull)!
    expect(Math.exp(-logSigma) / shape).toBeGreaterThan(0.8)
    expect(Math.exp(-logSigma) / shape).toBeLessThan(1.4)
  })
})

it.each([
  ['no-failure', { failed: [], censored: [1, 2] }],
  ['no-spread', { failed: [3], censored: [] }],
  ['no-spread', { failed: [3], censored: [1, 2, 3] }],
  ['no-spread', { failed: [3, 3], censored: [1] }],
  [null, { failed: [3], censored: [4] }],
  [null, { failed: [3, 4], censored: [] }],
])('there is none for the reason %s', (reason, values) => {
  expect(noMaximum(values)).toBe(reason)
  if (reason === null) expect(maximumLikelihood(values, locationScale.normal)).not.toBeNull()
  else expect(() => maximumLikelihood(values, locationScale.normal)).toThrow(RangeError)
})
