import { describe, expect, it } from 'vitest'
import { Trouble } from '#contract/errors.ts'
import { permissibleErrorKg, weightHalfWidthKg } from '#domain/calibration/weights/weightTolerance.ts'

describe('tolerance of a weight', () => {
  // OIML R 111-1:2004, Table 1, mg. Exact but for the division by a million.
  it.each([
    [50, [250, 800, 2500, 8000, 25_000]],
    [20, [100, 300, 1000, 3000, 10_000]],
    [10, [50, 160, 500, 1600, 5000]],
    [5, [25, 80, 250, 800, 2500]],
    [2, [10, 30, 100, 300, 1000]],
    [1, [5, 16, 50, 160, 500]],
    [0.5, [2.5, 8, 25, 80, 250]],
    [0.2, [1, 3, 10, 30, 100]],
    [0.1, [0.5, 1.6, 5, 16, 50]],
    [0.05, [0.3, 1, 3, 10, 30]],
    [0.02, [0.25, 0.8, 2.5, 8, 25]],
    [0.01, [0.2, 0.6, 2, 6, 20]],
    [0.005, [0.16, 0.5, 1.6, 5, 16]],
    [0.002, [0.12, 0.4, 1.2, 4, 12]],
    [0.001, [0.1, 0.3, 1, 3, 10]],
  ] as const)('of %d kg in classes F1, F2, M1, M2, M3', (nominalKg, expectedMg) => {
    const classes = ['F1', 'F2', 'M1', 'M2', 'M3'] as const
    classes.forEach((oimlClass, index) => {
      expect(permissibleErrorKg(nominalKg, oimlClass) * 1e6).toBeCloseTo(expectedMg[index]!, 9)
    })
  })

  // OIML R 111-1:2004, Table 1, g.
  it.each([
    [100, [5, 16, 50]],
    [200, [10, 30, 100]],
    [500, [25, 80, 250]],
    [1000, [50, 160, 500]],
    [2000, [100, 300, 1000]],
    [5000, [250, 800, 2500]],
  ] as const)('of %d kg in classes M1, M2, M3', (nominalKg, expectedG) => {
    const classes = ['M1', 'M2', 'M3'] as const
    classes.forEach((oimlClass, index) => {
      expect(permissibleErrorKg(nominalKg, oimlClass) * 1000).toBeCloseTo(expectedG[index]!, 9)
    })
    expect(() => permissibleErrorKg(nominalKg, 'F2')).toThrow(/no limit/)
  })

  it('of heavy weights is in the table for the M classes only', () => {
    expect(() => permissibleErrorKg(500, 'F1')).toThrow(/no limit for a weight of 500 kg in class F1/)
  })

  it('is what the owner states where he states it', () => {
    expect(weightHalfWidthKg({ nominalKg: 7.3, tolerance: { kind: 'own', halfWidthKg: 0.02 } })).toBe(0.02)
    expect(weightHalfWidthKg({ nominalKg: 20, tolerance: { kind: 'oiml', class: 'M1' } })).toBeCloseTo(0.001, 12)
  })

  it('says so when a nominal value is not in the table', () => {
    expect(() => permissibleErrorKg(7.3, 'M1')).toThrow(Trouble)
  })
})
