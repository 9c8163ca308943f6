import { describe, expect, it } from 'vitest'
import { airDensity, conventionalAirDensity } from '#domain/calibration/weights/airDensity.ts'

describe('density of air', () => {
  // First: the simplified formula of OIML R 111-1 E.3-1 (formula from memory), worked out apart from this program; tolerance 5.1e-6 kg/m3.
  // Second: CIPM-2007 in full (coefficients from memory), another formula for the same thing; agreement within 1e-4.
  it.each([
    [1013.25, 50, 20, 1.19929, 1.199314],
    [1013.25, 50, 23, 1.18611, 1.186085],
    [1000, 50, 20, 1.18354, 1.183557],
    [950, 40, 15, 1.14578, 1.145879],
    [1013.25, 65, 25, 1.17528, 1.175226],
  ])('at %d hPa, %d %% and %d degrees', (pressure, humidity, temperature, simplified, full) => {
    const density = airDensity(pressure, humidity, temperature)
    expect(Math.abs(density - simplified)).toBeLessThan(5.1e-6)
    expect(Math.abs(density / full - 1)).toBeLessThan(1e-4)
  })

  it('is 1.2 kg/m3 by convention', () => {
    // OIML D 28 and R 111 (see weightForce.spec.ts).
    expect(conventionalAirDensity).toBe(1.2)
  })

  it('is known for 500 to 1100 hPa, 0 to 100 % and -20 to 60 degrees, ends included', () => {
    const ends: [number, number, number][] = [
      [500, 50, 20],
      [1100, 50, 20],
      [1000, 0, 20],
      [1000, 0.5, 20],
      [1000, 100, 20],
      [1000, 50, -20],
      [1000, 50, 60],
    ]
    for (const end of ends) expect(airDensity(...end)).toBeGreaterThan(0)
    const beyond: [number, number, number][] = [
      [499, 50, 20],
      [1101, 50, 20],
      [1000, -0.5, 20],
      [1000, 100.5, 20],
      [1000, 50, -21],
      [1000, 50, 61],
    ]
    for (const one of beyond) expect(() => airDensity(...one)).toThrow(RangeError)
  })

  it('refuses air that does not exist in a workshop', () => {
    expect(() => airDensity(0, 50, 20)).toThrow(RangeError)
    expect(() => airDensity(1000, 101, 20)).toThrow(RangeError)
    expect(() => airDensity(1000, 50, 80)).toThrow(RangeError)
  })
})
