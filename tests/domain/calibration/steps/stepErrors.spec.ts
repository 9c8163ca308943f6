import { describe, expect, it } from 'vitest'
import { classOfStep } from '#domain/calibration/steps/accuracyClass.ts'
import { stepErrors } from '#domain/calibration/steps/stepErrors.ts'

describe('errors of a step', () => {
  it('are those of the worked row', () => {
    // A made-up row worked by hand with the definitions of ISO 7500-1 (from memory): 10,000 N applied; 10,040, 10,070,
    // 10,010 N indicated; r = 5 N; back at the step after 10,040 N: 10,130 N. Exact but for binary fractions.
    const errors = stepErrors({
      forceN: 10_000,
      increasingN: [10_040, 10_070, 10_010],
      pairsN: [{ upN: 10_040, downN: 10_130 }],
      resolutionN: 5,
      zeroErrorN: null,
      highestForceN: 10_000,
    })
    expect(errors.q).toBeCloseTo(0.4, 12)
    expect(errors.b).toBeCloseTo(0.6, 12)
    expect(errors.v).toBeCloseTo(0.9, 12)
    expect(errors.a).toBeCloseTo(0.05, 12)
    expect(errors.f0).toBeNull()
    // q and a keep class 0.5; b = 0.6 and v = 0.9 do not.
    expect(classOfStep(errors)).toBe('1')
  })

  it('take the zero error against the highest force, and the largest reversibility with its sign', () => {
    const errors = stepErrors({
      forceN: 100,
      increasingN: [100],
      pairsN: [
        { upN: 100, downN: 100.2 },
        { upN: 100, downN: 99.5 },
      ],
      resolutionN: null,
      zeroErrorN: -2,
      highestForceN: 1000,
    })
    expect(errors.f0).toBeCloseTo(-0.2, 12)
    expect(errors.v).toBeCloseTo(-0.5, 12)
    expect(errors.b).toBeNull()
    expect(errors.a).toBeNull()
  })

  it('keep the largest reversibility wherever it stands among the runs', () => {
    const vOf = (...downN: number[]) =>
      stepErrors({
        forceN: 0.5,
        increasingN: [0.5, 0.51],
        pairsN: downN.map((value) => ({ upN: 0.5, downN: value })),
        resolutionN: null,
        zeroErrorN: null,
        highestForceN: 0.8,
      })
    expect(vOf(0.51, 0.505).v).toBeCloseTo(2, 10)
    expect(vOf(0.505, 0.51).v).toBeCloseTo(2, 10)
    // Two runs of increasing force, 0.5 and 0.51 N of 0.5 N.
    expect(vOf().b).toBeCloseTo(2, 10)
    expect(vOf().q).toBeCloseTo(1, 10)
  })

  it('are had from one reading of increasing force, but for the repeatability', () => {
    const errors = stepErrors({
      forceN: 100,
      increasingN: [100.5],
      pairsN: [],
      resolutionN: null,
      zeroErrorN: null,
      highestForceN: 100,
    })
    expect(errors.q).toBeCloseTo(0.5, 10)
    expect(errors.b).toBeNull()
  })

  it('cannot be had without readings of increasing force', () => {
    const errors = stepErrors({
      forceN: 100,
      increasingN: [],
      pairsN: [],
      resolutionN: 1,
      zeroErrorN: null,
      highestForceN: 100,
    })
    expect(errors).toEqual({ q: null, b: null, v: null, f0: null, a: 1 })
  })

  it('refuse a force of zero, of which nothing is a percentage', () => {
    const step = { increasingN: [1], pairsN: [], resolutionN: null, zeroErrorN: null, highestForceN: 10 }
    expect(() => stepErrors({ ...step, forceN: 0 })).toThrow(RangeError)
    expect(() => stepErrors({ ...step, forceN: 5, highestForceN: 0 })).toThrow(RangeError)
  })
})
