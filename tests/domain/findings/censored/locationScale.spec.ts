import { describe, expect, it } from 'vitest'
import { type LocationScale, locationScale } from '#domain/findings/censored/locationScale.ts'

const distributions = Object.entries(locationScale)

describe.each(distributions)('%s', (_name, model: LocationScale) => {
  it.each([-3, -0.5, 0, 1.3, 4])('has the derivatives of its logarithms at %d', (z) => {
    const h = 1e-5
    for (const curve of [model.density, model.survival]) {
      const [, first, second] = curve(z)
      expect(first).toBeCloseTo((curve(z + h)[0] - curve(z - h)[0]) / (2 * h), 4)
      expect(second).toBeCloseTo((curve(z + h)[1] - curve(z - h)[1]) / (2 * h), 4)
    }
  })

  it('has the quantile that leaves that share surviving', () => {
    for (const p of [0.05, 0.5, 0.9])
      expect(Math.exp(model.survival(model.standardQuantile(p))[0])).toBeCloseTo(1 - p, 12)
  })

  it('finds the location of a mean again', () => {
    expect(model.meanMPa(model.locationOfMean(7, 0.3), 0.3)).toBeCloseTo(7, 12)
  })
})

it('keeps the digits of a survival far out in the tail', () => {
  // mpmath 1.3.0: log(ncdf(-z))
  for (const [z, log] of [
    [11.9, -74.2074180512],
    [12.1, -76.6238612425],
    [30, -454.321243956],
  ] as const)
    expect(Math.abs(locationScale.normal.survival(z)[0] / log - 1)).toBeLessThan(1e-8)
})

it('has the means of scipy', () => {
  // scipy 1.17.1: stats.lognorm(0.4, scale=exp(2)).mean(); stats.weibull_min(1 / 0.25, scale=exp(2)).mean()
  expect(locationScale.lognormal.meanMPa(2, 0.4)).toBeCloseTo(8.0044689143, 9)
  expect(locationScale.weibull.meanMPa(2, 0.25)).toBeCloseTo(6.6974587512, 9)
})
