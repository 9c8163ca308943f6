import { expect, it } from 'vitest'
import { meanInterval } from '#domain/findings/meanInterval.ts'

it('is the interval of the handbook', () => {
  // NIST/SEMATECH e-Handbook 1.3.5.2: ZARR13.DAT, 195 values, mean 9.261460, standard deviation 0.022789, 9.258242 to 9.264679
  const { mean, low, high } = meanInterval({ n: 195, mean: 9.26146, squares: 194 * 0.022789 ** 2 }, 0.95)
  expect(mean).toBe(9.26146)
  expect(low).toBeCloseTo(9.258242, 5)
  expect(high).toBeCloseTo(9.264679, 5)
})

it('has no ends for one value, and no mean for none', () => {
  expect(meanInterval({ n: 1, mean: 3, squares: 0 }, 0.95)).toEqual({ mean: 3, low: null, high: null })
  expect(meanInterval(null, 0.95)).toEqual({ mean: null, low: null, high: null })
})
