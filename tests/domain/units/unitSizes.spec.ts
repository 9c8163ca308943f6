import { describe, expect, it } from 'vitest'
import { convertUnit } from '#domain/units/unitSizes.ts'

describe('convertUnit', () => {
  // NIST SP 811 (2008), appendix B.8, in the seven digits printed there.
  it.each([
    [1, 'lbf', 'N', 4.448222],
    [1, 'kip', 'kN', 4.448222],
    [1, 'kgf', 'N', 9.80665],
    [1, 'in', 'mm', 25.4],
    [1, 'ft', 'm', 0.3048],
    [1, 'in²', 'mm²', 645.16],
    [1, 'psi', 'kPa', 6.894757],
    [1, 'ksi', 'MPa', 6.894757],
    [1, 'lb', 'kg', 0.4535924],
    [1, 'oz', 'g', 28.34952],
    [1, 'lb/ft³', 'kg/m³', 16.01846],
    [1, 'ft/s²', 'm/s²', 0.3048],
    [212, '°F', '°C', 100],
    [32, '°F', '°C', 0],
    [20, '°C', '°F', 68],
    [-40, '°C', '°F', -40],
    [1, 'min', 's', 60],
    [1, 'h', 's', 3600],
    [1, 'd', 's', 86_400],
  ])('makes of %d %s in %s what the guide has: %d', (value, from, to, expected) => {
    const converted = convertUnit(value, from, to)!
    expect(Number(converted.toPrecision(7))).toBe(expected)
  })

  it('takes a rated load in kilograms or pounds for a force, and a mass in pounds for a mass', () => {
    expect(convertUnit(50, 'kg', 'N')).toBeCloseTo(490.3325, 9)
    expect(convertUnit(1, 'lb', 'N')).toBeCloseTo(4.4482216152605, 12)
    expect(convertUnit(10, 'lbs', 'kg')).toBeCloseTo(4.5359237, 12)
  })

  it('knows the marks of inches and feet, and units without raised figures', () => {
    expect(convertUnit(1.1875, '"', 'mm')).toBeCloseTo(30.1625, 12)
    expect(convertUnit(2, 'in2', 'mm²')).toBeCloseTo(1290.32, 9)
  })

  it('understands a clamp time in hours or days', () => {
    expect([convertUnit(24, 'hours', 'min'), convertUnit(1.5, 'hr', 'min'), convertUnit(2, 'days', 'min')]).toEqual([
      ...[1440, 90, 2880],
    ])
  })

  it.each([
    ['kg', 'mm'],
    ['N', ''],
    ['constructor', 'N'],
    ['furlong', 'mm'],
  ])('does not make %j into %j', (from, to) => expect(convertUnit(1, from, to)).toBeNull())
})
