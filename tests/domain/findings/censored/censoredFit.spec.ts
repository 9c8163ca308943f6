import { describe, expect, it } from 'vitest'
import { type CensoredFit, censoredFit, censoredMean } from '#domain/findings/censored/censoredFit.ts'

const handbook = {
  failed: [54, 187, 216, 240, 244, 335, 361, 373, 375, 386],
  censored: new Array<number>(10).fill(500),
}
const fitted = (distribution: 'weibull' | 'lognormal' | 'normal') =>
  censoredFit(handbook, distribution, 0.95) as CensoredFit

describe('the handbook example of censored failures', () => {
  // NIST/SEMATECH e-Handbook 8.4.1.3 prints a characteristic life of 606.5280, shape 1.7208, log likelihood 75.135, AIC 154.27 and
  // 154.39, mean 540.737; its 606.5280 is not the maximum (606.527558, R survreg): four figures are checked there, more against R.
  it('has the printed Weibull', () => {
    const fit = fitted('weibull')
    expect(fit.parameters.scale).toBeCloseTo(606.528, 2)
    expect(fit.parameters.shape).toBeCloseTo(1.7208, 4)
    expect(fit.logLikelihood).toBeCloseTo(-75.1346182, 6)
    expect(fit.aic).toBeCloseTo(154.269236, 5)
    expect(fit.meanMPa).toBeCloseTo(540.737025, 4)
    expect(fit.medianMPa).toBeCloseTo(490.1738, 3)
    expect(fit.b10MPa).toBeCloseTo(164.0224, 3)
  })

  it('has the printed lognormal', () => {
    const fit = fitted('lognormal')
    expect(fit.aic).toBeCloseTo(154.392542, 5)
    expect(fit.parameters.mu).toBeCloseTo(6.2260151, 6)
    expect(fit.parameters.sigma).toBeCloseTo(0.9089139, 6)
  })

  it('has standard errors by the delta method', () => {
    // R survreg: SE of log eta 0.2059439, of log scale 0.2918128
    const { scale, shape } = fitted('weibull').standardErrors
    expect(scale).toBeCloseTo(606.527558 * 0.2059439, 3)
    expect(shape).toBeCloseTo(1.72079726 * 0.2918128, 5)
  })

  it('adds 12 / (n - 3) to the criterion for few blocks', () => {
    const { aic, aicc } = fitted('normal')
    expect(aicc! - aic).toBeCloseTo(12 / 17, 12)
  })
})

it('has the mean of the fit alone, or the same word where there is none', () => {
  for (const distribution of ['weibull', 'lognormal', 'normal'] as const)
    expect(censoredMean(handbook, distribution)).toBe(fitted(distribution).meanMPa)
  expect(censoredMean({ failed: [], censored: [3] }, 'normal')).toBe('no-failure')
})

it('has no corrected criterion for three blocks', () => {
  expect(censoredFit({ failed: [1, 2, 3], censored: [] }, 'normal', 0.95)).toMatchObject({ aicc: null })
})

it.each([
  ['no-failure', { failed: [], censored: [5, 6] }],
  ['no-spread', { failed: [6, 6], censored: [5] }],
])('says %s in place of a fit', (reason, strengths) => {
  expect(censoredFit(strengths, 'weibull', 0.95)).toBe(reason)
})

it('keeps its digits where all strengths lie within a millionth of each other', () => {
  // Logarithms a million times as close together: the same fit with a spread a million times smaller.
  const steps = [-1.7, -0.9, -0.4, 0.1, 0.3, 0.8, 1.2]
  const spreadBy = (sigma: number, distribution: 'weibull' | 'lognormal') =>
    censoredFit(
      { failed: steps.map((step) => 108 * Math.exp(sigma * step)), censored: [108 * Math.exp(sigma)] },
      distribution,
      0.95,
    ) as CensoredFit
  const [wide, narrow] = [0.1, 1e-7]
  expect((spreadBy(narrow, 'weibull').parameters.shape! * narrow) / wide).toBeCloseTo(
    spreadBy(wide, 'weibull').parameters.shape!,
    6,
  )
  expect((spreadBy(narrow, 'lognormal').parameters.sigma! * wide) / narrow).toBeCloseTo(
    spreadBy(wide, 'lognormal').parameters.sigma!,
    7,
  )
  const { b10MPa, b10LowMPa, b10HighMPa } = spreadBy(narrow, 'weibull')
  expect(b10LowMPa!).toBeLessThan(b10MPa)
  expect(b10HighMPa!).toBeGreaterThan(b10MPa)
})
