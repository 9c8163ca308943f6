import { describe, expect, it } from 'vitest'
import type { Weight } from '#contract/calibration/weight.ts'
import { Trouble } from '#contract/errors.ts'
import { stackForce } from '#domain/calibration/weights/weightStack.ts'

const disc = (nominalKg: number, conventionalMassKg: number | null = null): Weight => ({
  name: `disc ${nominalKg} kg`,
  nominalKg,
  conventionalMassKg,
  tolerance: { kind: 'oiml', class: 'M3' },
  density: { kind: 'material', material: 'cast iron' },
})
const conditions = { gMPerS2: 9.80665, airDensityKgPerM3: 1.2, leverRatio: 1 }

describe('stack of weights', () => {
  it('adds forces, and tolerances straight', () => {
    // By hand: 30 kg at 1.2 kg/m3 of air, 30 · 9.80665 · 0.99985 N. R 111 M3: 10 g + 5 g of 30 kg.
    const stack = stackForce([disc(20), disc(10)], conditions, null)
    expect(stack.forceN).toBeCloseTo(294.155370075, 9)
    expect(stack.weightsShare).toBeCloseTo(0.015 / 30, 12)
    // (1/7200 - 1/8000) m3/kg of air that is known to a tenth of 1.2 kg/m3.
    expect(stack.buoyancyShare).toBeCloseTo((1 / 7200 - 1 / 8000) * 0.12, 12)
  })

  it('takes the mass of the certificate where there is one', () => {
    expect(stackForce([disc(20, 20.005)], conditions, null).forceN).toBeCloseTo(20.005 * 9.80665 * 0.99985, 9)
  })

  it('is the zero point without weights', () => {
    expect(stackForce([], conditions, 100)).toEqual({ forceN: 0, weightsShare: 0, buoyancyShare: 0 })
  })

  it('refuses weights heavier than the capacity, with the lever counted', () => {
    expect(stackForce([disc(20)], conditions, 200).forceN).toBeLessThan(200)
    expect(() => stackForce([disc(20)], { ...conditions, leverRatio: 5 }, 200)).toThrow(
      /more than the rated load allows/,
    )
  })

  it('may weigh as much as the capacity', () => {
    const { forceN } = stackForce([disc(20)], conditions, null)
    expect(stackForce([disc(20)], conditions, forceN).forceN).toBe(forceN)
  })

  it('takes the air as it was given, and the conventional one where there is none', () => {
    const share = (airDensityKgPerM3: number) =>
      stackForce([disc(20)], { ...conditions, airDensityKgPerM3 }, null).buoyancyShare
    expect(share(1.1)).toBeCloseTo((1 / 7200 - 1 / 8000) * 0.11, 12)
    expect(share(0)).toBeCloseTo((1 / 7200 - 1 / 8000) * 0.12, 12)
  })

  it('refuses a weight without mass, however light the others', () => {
    expect(stackForce([disc(0.5)], conditions, null).forceN).toBeCloseTo(0.5 * 9.80665 * 0.99985, 9)
    for (const massKg of [0, -0.5, -1]) expect(() => stackForce([disc(20, massKg)], conditions, null)).toThrow(Trouble)
  })
})
