import { describe, expect, it } from 'vitest'
import { polynomialFit } from '#domain/calibration/fit/polynomialFit.ts'
import { fittedValue, standardErrorOfFit } from '#domain/calibration/fit/prediction.ts'
import { tQuantile } from '#domain/numbers/distributions/studentT.ts'
import { pontius } from './fixtures/pontius.ts'

describe('prediction from a fit', () => {
  it('agrees with JCGM 100 H.3.4: the correction at 30 degrees', () => {
    // R 4.2.2: predict(lm(b ~ I(t - 20)), data.frame(t = 30), se.fit = TRUE); the document prints -0.1494, u 0.0041 (from memory).
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511]
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16]
    const { centred } = polynomialFit(t, b, 1)
    expect(fittedValue(centred, 30)).toBeCloseTo(-0.149376812732, 11)
    expect(standardErrorOfFit(centred, 30)).toBeCloseTo(0.00413859575285, 12)
  })

  it('agrees with R predict.lm on the Pontius quadratic', () => {
    // R: q <- lm(y ~ z + I(z^2)), z = load / 1e6; predict(q, data.frame(z = 1.7), se.fit = TRUE) and interval = "prediction".
    const fit = polynomialFit(
      pontius.map(([, load]) => load),
      pontius.map(([y]) => y),
      2,
    )
    expect(fittedValue(fit.centred, 1.7e6)).toBeCloseTo(1.2360393723893, 12)
    expect(standardErrorOfFit(fit.centred, 1.7e6)).toBeCloseTo(4.8426818745073e-5, 14)
    const half = tQuantile(0.975, 37) * Math.hypot(fit.residualSD!, standardErrorOfFit(fit.centred, 1.7e6))
    expect(fittedValue(fit.centred, 1.7e6) - half).toBeCloseTo(1.2356122207795, 11)
    expect(fittedValue(fit.centred, 1.7e6) + half).toBeCloseTo(1.2364665239991, 11)
  })

  it('has, in the middle of the data of a line, the residual SD over the root of their number', () => {
    const fit = polynomialFit([0, 1, 2, 3], [0, 1.1, 1.9, 3], 1)
    expect(standardErrorOfFit(fit.centred, 1.5)).toBeCloseTo(fit.residualSD! / 2, 12)
  })

  it('refuses a fit without degrees of freedom', () => {
    const exact = polynomialFit([0, 1], [0, 1], 1)
    expect(() => standardErrorOfFit(exact.centred, 0.5)).toThrow(RangeError)
  })
})
