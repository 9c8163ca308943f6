import { describe, expect, it } from 'vitest'
import { normalGravity } from '#domain/calibration/weights/normalGravity.ts'
import { standardGravityMPerS2 } from '#domain/units/factors.ts'

describe('normal gravity', () => {
  // Somigliana's formula with the defining constants of WGS 84 and GRS 80, in exact arithmetic; tolerance 1e-10 m/s2.
  it.each([
    [0, 9.7803253359, 9.7803267715],
    [15, 9.7837849624, 9.7837863976],
    [30, 9.7932472692, 9.7932487036],
    [40, 9.8016968628, 9.8016982964],
    [45, 9.8061977694, 9.8061992025],
    [50, 9.8107021356, 9.8107035683],
    [52, 9.8124740779, 9.8124755104],
    [55, 9.8150729472, 9.8150743794],
    [60, 9.8191769531, 9.819178385],
    [65, 9.822888768, 9.8228901996],
    [70, 9.8260947644, 9.8260961956],
    [90, 9.8321849379, 9.8321863685],
  ])('at sea level at %d degrees is as tabulated for WGS 84 and GRS 80', (latitude, wgs84, grs80) => {
    expect(Math.abs(normalGravity(latitude) - wgs84)).toBeLessThan(1e-10)
    expect(Math.abs(normalGravity(latitude, 0, 'GRS 80') - grs80)).toBeLessThan(1e-10)
  })

  it('has the pole values of the defining tables', () => {
    // GRS 80 gamma_p 9.8321863685: list of the derived constants of GRS 80 by the German Geodetic Research Institute (DGFI), which
    // has gamma_e, e² and f as here. WGS 84 gamma_p 9.8321849378, from memory. Tolerance 2e-10: constants are rounded.
    expect(Math.abs(normalGravity(90) - 9.8321849378)).toBeLessThan(2e-10)
    expect(Math.abs(normalGravity(-90, 0, 'GRS 80') - 9.8321863685)).toBeLessThan(2e-10)
  })

  // Second-order height formula of WGS 84 in exact arithmetic; tolerance half a unit of the last place, 5.1e-8 m/s2.
  it.each([
    [0, 100, 9.7800166],
    [15, 500, 9.7822414],
    [30, 1000, 9.7901614],
    [40, 100, 9.8013883],
    [45, 500, 9.8046552],
    [45, 1000, 9.8031129],
    [52, 1000, 9.8093898],
    [60, 100, 9.8188685],
    [70, 500, 9.824553],
    [90, 1000, 9.8291023],
  ])('at %d degrees and %d m is as tabulated', (latitude, height, expected) => {
    expect(Math.abs(normalGravity(latitude, height) - expected)).toBeLessThan(5.1e-8)
  })

  // The closed potential of GRS 80 in 50 digits, without any series (fixtures/normalGravityAtHeight.py), rounded to 1e-9;
  // tolerance 2e-7 m/s2, as the height formula has the flattening in its first power: what it leaves out is some 2 h/a · f² g.
  it.each([
    [0, 1000, 9.7772397],
    [30, 1000, 9.79016273],
    [45, 1000, 9.80311433],
    [60, 2000, 9.813012295],
    [90, 1000, 9.829103704],
  ])('at %d degrees and %d m above GRS 80 is the gradient of its potential', (latitude, height, expected) => {
    expect(Math.abs(normalGravity(latitude, height, 'GRS 80') - expected)).toBeLessThan(2e-7)
  })

  it('is known from 500 m below to 10,000 m above the sea', () => {
    expect(normalGravity(45, -500)).toBeGreaterThan(normalGravity(45, 10_000))
  })

  it('falls by the free-air gradient of 3.086e-6 per second squared and metre', () => {
    // Linear free-air correction, a common figure; agrees to 1.5e-6 m/s2 over 1000 m at mid latitude.
    expect(Math.abs(normalGravity(45) - 3.086e-6 * 1000 - normalGravity(45, 1000))).toBeLessThan(1.5e-6)
  })

  it('equals standard gravity at 45.4996 degrees and is the same north and south', () => {
    // Latitude solved in exact arithmetic; half a unit of its last place, 5e-5 degrees, is 4.6e-8 m/s2 at 9.06e-4 per degree.
    expect(Math.abs(normalGravity(45.4996) - standardGravityMPerS2)).toBeLessThan(4.6e-8)
    expect(normalGravity(-33)).toBe(normalGravity(33))
  })

  it('refuses a latitude or a height that does not exist', () => {
    for (const latitude of [90.01, -90.01, Number.NaN]) expect(() => normalGravity(latitude)).toThrow(RangeError)
    for (const height of [-501, 10_001, Number.NaN]) expect(() => normalGravity(45, height)).toThrow(RangeError)
  })
})
