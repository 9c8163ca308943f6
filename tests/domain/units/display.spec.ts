import { describe, expect, it } from 'vitest'
import {
  forceNFromShown,
  formatArea,
  formatForce,
  formatLength,
  formatLiveForce,
  formatLoadingRate,
  formatStrength,
  lengthMmFromShown,
  withSignificantDigits,
} from '#domain/units/display.ts'

describe('withSignificantDigits', () => {
  // Rounded by hand.
  it.each([
    [1234.5678, 4, '1235'],
    [12.345678, 4, '12.35'],
    [9.9996, 4, '10.00'],
    [0.00012345, 3, '0.000123'],
    [-5.5, 2, '-5.5'],
    [123456, 3, '123456'],
    [0, 4, '0'],
    [-1e-15, 3, '0'],
  ])('shows %f with %i digits as %s', (value, digits, text) => {
    expect(withSignificantDigits(value, digits)).toBe(text)
  })

  it('refuses what is no number', () => {
    expect(() => withSignificantDigits(Number.NaN, 3)).toThrow(RangeError)
    expect(() => withSignificantDigits(1, 0)).toThrow(RangeError)
  })
})

describe('quantities for people', () => {
  it('shows force in N, from 10 kN on in kN, or in lbf', () => {
    expect(formatForce(8123.4, 'SI')).toEqual({ value: '8123', unit: 'N' })
    expect(formatForce(12_345, 'SI')).toEqual({ value: '12.35', unit: 'kN' })
    expect(formatForce(9999.6, 'SI')).toEqual({ value: '10.00', unit: 'kN' })
    expect(formatForce(4448.2216152605, 'US')).toEqual({ value: '1000', unit: 'lbf' })
    expect(formatForce(-0.04, 'SI')).toEqual({ value: '0.0', unit: 'N' })
  })

  it('keeps the live read-out of even width', () => {
    expect(formatLiveForce(5.04, 'SI')).toEqual({ value: '5.0', unit: 'N' })
    expect(formatLiveForce(8123.4, 'SI')).toEqual({ value: '8123', unit: 'N' })
    expect(formatLiveForce(444.82216152605, 'US')).toEqual({ value: '100.0', unit: 'lbf' })
  })

  it('shows strength, length, area and rate in both systems', () => {
    // 2000 N on 200 mm² is 10 N/mm²; 1 MPa is 145.0377 psi.
    expect(formatStrength(10, 'SI')).toEqual({ value: '10.00', unit: 'MPa' })
    expect(formatStrength(10, 'US')).toEqual({ value: '1450', unit: 'psi' })
    expect(formatLength(25.4, 'US')).toEqual({ value: '1.000', unit: 'in' })
    expect(formatLength(20, 'SI')).toEqual({ value: '20.00', unit: 'mm' })
    expect(formatArea(1935.48, 'US')).toEqual({ value: '3.000', unit: 'in²' })
    expect(formatArea(600, 'SI')).toEqual({ value: '600.0', unit: 'mm²' })
    expect(formatLoadingRate(499.6, 'SI')).toEqual({ value: '500', unit: 'N/s' })
  })

  it('reads typed values back', () => {
    expect(lengthMmFromShown(2, 'US')).toBe(50.8)
    expect(forceNFromShown(1, 'US')).toBe(4.4482216152605)
    expect(forceNFromShown(1, 'SI')).toBe(1)
  })
})
