import { describe, expect, it } from 'vitest'
import { uncertaintyModel } from '#contract/calibration/uncertainty.ts'
import { defaultCalibrationOptions } from '#domain/calibration/calibrationOptions.ts'
import { polynomialFit } from '#domain/calibration/fit/polynomialFit.ts'
import { type UncertaintyFindings, uncertaintyModelOf } from '#domain/calibration/uncertainty/uncertaintyModel.ts'

const readings = [0, 100, 200, 300]
const findings = {
  fit: polynomialFit(readings, [0, 50.1, 99.9, 150], 1),
  readings,
  steps: [
    { forceN: 50, q: 0.1, b: null, v: 0.4, f0: -0.2, a: 1, class: '1' },
    { forceN: 150, q: 0.1, b: null, v: -0.6, f0: -0.2, a: 0.3, class: '1' },
  ] as const,
  verifiedRangeN: [50, 150] as const,
  resolutionN: 0.5,
  repeats: null,
  curveFits: false,
  lackOfFitHalfWidthN: null,
}

describe('uncertainty model', () => {
  it('takes what was measured, by hand: zero 0.2 % of 150 N and half of 0.5 N, reversibility half of 0.6 %', () => {
    const model = uncertaintyModelOf(findings, { ...defaultCalibrationOptions, resolution: 1, weightsShare: 5e-4 })!
    expect(model.zeroHalfWidthN).toBeCloseTo(0.55, 12)
    expect(model.reversibilityShare).toBeCloseTo(0.003, 12)
    expect(model.weightsShare).toBe(5e-4)
    expect(model.readingRange).toEqual([0, 300])
    expect(uncertaintyModel.safeParse(model).success).toBe(true)
  })

  it('lets the spread about the curve stand for repeatability where nothing was repeated', () => {
    const model = uncertaintyModelOf(findings, defaultCalibrationOptions)!
    expect(model.repeatabilityN).toBe(findings.fit.residualSD)
    expect(model.repeatabilityDegreesOfFreedom).toBe(2)
    const repeated = uncertaintyModelOf(
      { ...findings, repeats: { sdN: 0.3, degreesOfFreedom: 7 } },
      defaultCalibrationOptions,
    )!
    expect(repeated.repeatabilityN).toBe(0.3)
    expect(repeated.repeatabilityDegreesOfFreedom).toBe(7)
  })

  it('leaves out what was not measured', () => {
    const steps = findings.steps.map((step) => ({ ...step, v: null, f0: null }))
    const model = uncertaintyModelOf({ ...findings, steps, resolutionN: null }, defaultCalibrationOptions)!
    expect(model.zeroHalfWidthN).toBeNull()
    expect(model.reversibilityShare).toBeNull()
    expect(model.gravityShare).toBeNull()
  })

  it('does not exist for a curve that was drawn through its points', () => {
    const fit = polynomialFit([0, 300], [0, 150], 1)
    expect(uncertaintyModelOf({ ...findings, fit }, defaultCalibrationOptions)).toBeNull()
  })
})

describe('parts of an uncertainty model', () => {
  const modelOf = (change: Partial<UncertaintyFindings>) =>
    uncertaintyModelOf({ ...findings, ...change }, defaultCalibrationOptions)!
  const withoutZero = findings.steps.map((step) => ({ ...step, f0: null }))

  it('are half the resolution or what is left over at zero where only one is known', () => {
    expect(modelOf({ steps: withoutZero }).zeroHalfWidthN).toBeCloseTo(0.25, 12)
    expect(modelOf({ resolutionN: null }).zeroHalfWidthN).toBeCloseTo(0.3, 12)
  })

  it('are taken from the verified range alone, ends included', () => {
    const [first, last] = findings.steps
    const below = { ...first!, forceN: 20, v: 5 }
    expect(modelOf({ steps: [below, { ...first!, v: 0.8 }, last!] }).reversibilityShare).toBeCloseTo(0.004, 12)
    expect(modelOf({}).forceRangeN).toEqual([50, 150])
  })
})
