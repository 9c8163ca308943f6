import { describe, expect, it } from 'vitest'
import { massFromConventional, weightForceN } from '#domain/calibration/weights/weightForce.ts'

const air = (airDensityKgPerM3: number, leverRatio = 1) => ({ gMPerS2: 9.80665, airDensityKgPerM3, leverRatio })

describe('force of a weight', () => {
  it('at 1.2 kg/m3 of air does not depend on the density of the weight: F = m g 0.99985', () => {
    // Identity of conventional mass (OIML D 28, R 111 from memory), exact: 20 · 9.80665 · 0.99985 = 196.10358005 N.
    for (const density of [2700, 7200, 7850, 8000, 11_340])
      expect(Math.abs(weightForceN(20, density, air(1.2)) - 196.10358005)).toBeLessThan(1e-10)
  })

  // 20 kg of conventional mass, exact arithmetic from the same formulas; tolerance half the last place, 5.1e-7 N.
  it.each([
    [7200, 1.1, 196.106304],
    [7200, 1.3, 196.100856],
    [7850, 1.1, 196.106079],
    [7850, 1.3, 196.101082],
  ])('of density %d kg/m3 in air of %d kg/m3', (density, airDensity, expected) => {
    expect(Math.abs(weightForceN(20, density, air(airDensity)) - expected)).toBeLessThan(5.1e-7)
  })

  it('is multiplied by the lever ratio', () => {
    expect(weightForceN(20, 7850, air(1.2, 10))).toBeCloseTo(1961.0358005, 9)
  })

  it('is mass times gravity where there is no air, and a mass of reference density is its conventional mass', () => {
    expect(weightForceN(20, 8000, air(0))).toBeCloseTo(196.133, 10)
    expect(massFromConventional(5, 8000)).toBe(5)
  })

  it('is that of any mass, density and gravity above zero', () => {
    // Less dense than air it rises: 0.5 kg of 0.5 kg/m3 in air of 1 kg/m3 are pushed up as hard as they weigh without air.
    expect(massFromConventional(0.5, 8000)).toBe(0.5)
    const mass = massFromConventional(0.5, 0.5)
    expect(weightForceN(0.5, 0.5, { gMPerS2: 0.5, airDensityKgPerM3: 1, leverRatio: 1 })).toBeCloseTo(-0.5 * mass, 12)
  })

  it('refuses what is no weight', () => {
    expect(() => weightForceN(0, 8000, air(1.2))).toThrow(RangeError)
    expect(() => weightForceN(-1, 8000, air(1.2))).toThrow(RangeError)
    expect(() => weightForceN(1, 0, air(1.2))).toThrow(RangeError)
    expect(() => weightForceN(1, 8000, air(-1))).toThrow(RangeError)
    expect(() => weightForceN(1, 8000, air(1.2, 0))).toThrow(RangeError)
    expect(() => weightForceN(1, 8000, { ...air(1.2), gMPerS2: 0 })).toThrow(RangeError)
  })
})
