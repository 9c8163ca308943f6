import { describe, expect, it } from 'vitest'
import { conventionalWeightDensity, weightDensity } from '#domain/calibration/weights/weightDensity.ts'

describe('density of a weight', () => {
  it('is the assumed density of its material', () => {
    // OIML R 111-1:2004, assumed densities; stainless steel is given there as 7900 to 8000.
    expect(weightDensity({ kind: 'material', material: 'cast iron' })).toBe(7200)
    expect(weightDensity({ kind: 'material', material: 'steel' })).toBe(7800)
    expect(weightDensity({ kind: 'material', material: 'brass' })).toBe(8400)
    expect(weightDensity({ kind: 'material', material: 'nickel silver' })).toBe(8600)
    expect(weightDensity({ kind: 'material', material: 'stainless steel' })).toBeGreaterThanOrEqual(7900)
    expect(weightDensity({ kind: 'material', material: 'stainless steel' })).toBeLessThanOrEqual(8000)
  })

  it('is 8000 kg/m3 by convention', () => {
    // OIML D 28 and R 111 (see weightForce.spec.ts).
    expect(conventionalWeightDensity).toBe(8000)
  })

  it('is what was typed', () => {
    expect(weightDensity({ kind: 'typed', kgPerM3: 11_340 })).toBe(11_340)
  })
})
