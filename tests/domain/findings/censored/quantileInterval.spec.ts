import { describe, expect, it } from 'vitest'
import { locationScale } from '#domain/findings/censored/locationScale.ts'
import { maximumLikelihood } from '#domain/findings/censored/maximumLikelihood.ts'
import { locationError, quantileInterval } from '#domain/findings/censored/quantileInterval.ts'

/** NIST/SEMATECH e-Handbook 8.4.1.3. */
const values = {
  failed: [54, 187, 216, 240, 244, 335, 361, 373, 375, 386].map(Math.log),
  censored: new Array<number>(10).fill(Math.log(500)),
}

describe('quantileInterval', () => {
  // R survreg of the same data: standard error of the log of the scale 0.2059439, B10 164.0224, median 490.1738
  it('has the quantiles and the standard error that R survreg gives', () => {
    const model = locationScale.weibull
    const estimate = maximumLikelihood(values, model)!
    expect(locationError(estimate, 0)).toBeCloseTo(0.2059439, 6)
    expect(quantileInterval(values, model, estimate, 0.1, 0.95).strengthMPa).toBeCloseTo(164.0224, 3)
    expect(quantileInterval(values, model, estimate, 0.5, 0.95).strengthMPa).toBeCloseTo(490.1738, 3)
  })
  it('takes the scale itself where the distribution is normal', () => {
    const model = locationScale.normal
    const plain = { failed: [8, 9, 10, 11, 12], censored: [] }
    const estimate = maximumLikelihood(plain, model)!
    const { strengthMPa, low, high } = quantileInterval(plain, model, estimate, 0.5, 0.95)
    expect(strengthMPa).toBeCloseTo(10, 8)
    // Student's t with 4 degrees of freedom: 2.776445 x 1.581139/√5
    expect(high! - 10).toBeCloseTo(1.963, 3)
    expect(10 - low!).toBeCloseTo(1.963, 3)
  })
})
