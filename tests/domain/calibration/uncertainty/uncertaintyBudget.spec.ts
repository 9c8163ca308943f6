import { describe, expect, it } from 'vitest'
import type { UncertaintyModel } from '#contract/calibration/uncertainty.ts'
import { uncertaintyBudget } from '#domain/calibration/uncertainty/uncertaintyBudget.ts'

const model: UncertaintyModel = {
  centred: {
    centre: 500,
    scale: 500,
    powers: [0, 1],
    coefficients: [500, 500],
    covariance: [
      [0, 0],
      [0, 0],
    ],
    degreesOfFreedom: 10,
  },
  readingRange: [0, 1000],
  forceRangeN: [50, 1000],
  repeatabilityN: 0.5,
  repeatabilityDegreesOfFreedom: 8,
  lackOfFitHalfWidthN: null,
  weightsShare: 0,
  buoyancyShare: 0,
  leverShare: 0,
  gravityShare: 0,
  resolution: null,
  zeroHalfWidthN: null,
  reversibilityShare: null,
  creepShare: null,
}

describe('uncertainty budget', () => {
  it('has every step of the range, and its worst where a constant uncertainty weighs most: at the lowest force', () => {
    // By hand: 2 · 0.5 N of 50 N is 2 %; of 100 N 1 %.
    const budget = uncertaintyBudget(model, [20, 100, 1000])
    expect(budget.steps.map((step) => step.forceN)).toEqual([100, 1000])
    expect(budget.steps[0]!.expandedPercent).toBeCloseTo(1, 10)
    expect(budget.worstPercent).toBeCloseTo(2, 10)
    expect(budget.worstAtN).toBe(50)
  })

  it.each([1, 17, 43, 59])('looks at 60 places of equal ratio: finds the worst at number %d to the digit', (place) => {
    // U/F of a curve with uncertainty (F - 2)(b - F) is highest at sqrt(2 b). With F = 500 + 500 u it is
    // 498 (b - 500) + 500 (b - 998) u - 250,000 u², scaled down.
    const worstAtN = 50 * 20 ** (place / 60)
    const b = worstAtN ** 2 / 2
    const c = [498 * (b - 500), 500 * (b - 998), -250_000].map((one) => one / 1e8)
    const bent: UncertaintyModel = {
      ...model,
      repeatabilityN: 0,
      centred: {
        ...model.centred,
        powers: [0, 1, 2],
        coefficients: [500, 500, 0],
        covariance: c.map((one) => c.map((other) => one * other)),
      },
    }
    expect(uncertaintyBudget(bent, [50, 1000]).worstAtN / worstAtN).toBeCloseTo(1, 9)
  })

  it('finds a worst place between the steps', () => {
    // By hand: a curve that is exact at 50 N and 1000 N, variance ((F - 50)(1000 - F) / 7500)², has U/F highest at sqrt(50 · 1000) = 223.6 N.
    // (F - 50)(1000 - F) = -F² + 1050 F - 50,000 with F = 500 + 500 u: 225,000 + 25,000 u - 250,000 u².
    const c = [30, 10 / 3, -100 / 3]
    const bent: UncertaintyModel = {
      ...model,
      repeatabilityN: 0,
      centred: {
        ...model.centred,
        powers: [0, 1, 2],
        coefficients: [500, 500, 0],
        covariance: c.map((a) => c.map((b) => a * b)),
      },
    }
    const budget = uncertaintyBudget(bent, [50, 1000])
    expect(budget.steps.map((step) => Math.round(step.expandedPercent * 1e6) + 0)).toEqual([0, 0])
    expect(Math.abs(budget.worstAtN - 223.6)).toBeLessThan(12)
    // At 223.607 N: 2 · (173.607 · 776.393 / 7500) / 223.607 = 16.0745 %.
    expect(budget.worstPercent).toBeGreaterThan(16.06)
    expect(budget.worstPercent).toBeLessThan(16.0746)
  })
})
