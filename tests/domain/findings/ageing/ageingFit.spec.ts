import { describe, expect, it } from 'vitest'
import { type AgeingFit, fitAgeing, fitAllAgeing, weightedFits } from '#domain/findings/ageing/ageingFit.ts'
import { agedHeld, agedMonths, agedStrengths } from './agedBlocks.ts'

const blocks = agedMonths.map((ageMonths, i) => ({ ageMonths, strengthMPa: agedStrengths[i]!, held: false }))
const partlyHeld = blocks.map((block, i) => ({ ...block, held: agedHeld[i]! }))
const fit = (...given: Parameters<typeof fitAgeing>) => fitAgeing(...given) as AgeingFit

describe('a model of ageing', () => {
  it('log-time is the line that R lm fits', () => {
    // R 4.2.2: coef(summary(lm(y ~ log1p(t))))
    const { parameters, standardErrors, degreesOfFreedom } = fit('log-time', blocks)
    expect(parameters[0]).toBeCloseTo(10.181730550847, 10)
    expect(parameters[1]).toBeCloseTo(-0.703250443276, 10)
    expect(standardErrors[0]).toBeCloseTo(0.1822900929742, 10)
    expect(standardErrors[1]).toBeCloseTo(0.0701474652192, 10)
    expect(degreesOfFreedom).toBe(13)
  })

  it('exponential approach is the curve that R nls fits', () => {
    // R 4.2.2: nls(y ~ a exp(-t/k) + e (1 - exp(-t/k))), AIC 11.8303846908 and with k = 4 corrected 15.8303846908
    const { parameters, standardErrors, aicc } = fit('exponential-approach', blocks)
    for (const [i, [value, error]] of (
      [
        [10.040783736, 0.171559181],
        [7.319959769, 0.297671825],
        [13.9448398605, 4.0271324048],
      ] as const
    ).entries()) {
      expect(Math.abs(parameters[i]! / value - 1)).toBeLessThan(1e-6)
      expect(Math.abs(standardErrors[i]! / error - 1)).toBeLessThan(1e-6)
    }
    expect(aicc).toBeCloseTo(15.8303846908, 6)
  })

  it('linear with held blocks is that of survreg, its errors widened for the spread that was fitted too', () => {
    // R 4.2.2 survreg: 9.6738694, SE 0.19834846; -0.06579933, SE 0.00981202672
    const { parameters, standardErrors } = fit('linear', partlyHeld)
    const wider = Math.sqrt(15 / 13)
    expect(parameters[0]).toBeCloseTo(9.6738694, 6)
    expect(standardErrors[0]! / wider).toBeCloseTo(0.19834846, 6)
    expect(standardErrors[1]! / wider).toBeCloseTo(0.00981202672, 8)
  })

  it('constant is the mean with its standard error', () => {
    const { parameters, standardErrors, sigmaMPa } = fit('constant', blocks)
    expect(parameters[0]).toBeCloseTo(8.58666666666667, 12)
    expect(standardErrors[0]).toBeCloseTo(sigmaMPa / Math.sqrt(15), 12)
  })

  it.each([
    ['few-ages', 'linear', blocks.slice(0, 3)],
    ['few-ages', 'exponential-approach', blocks.slice(0, 9)],
    ['few-blocks', 'linear', [blocks[0]!, blocks[3]!]],
    ['no-spread', 'constant', [blocks[0]!, blocks[0]!]],
  ] as const)('says %s in place of a fit', (reason, model, given) => {
    expect(fitAgeing(model, given)).toBe(reason)
  })

  it('exponential approach says so where the data run straight', () => {
    const straight = [0, 6, 12, 24, 36].flatMap((ageMonths) =>
      [-0.1, 0.1].map((by) => ({ ageMonths, strengthMPa: 10 - 0.05 * ageMonths + by, held: false })),
    )
    expect(fitAgeing('exponential-approach', straight)).toBe('no-curvature')
  })
})

describe('all models', () => {
  it('share a weight of 1 as their criteria say', () => {
    const fits = fitAllAgeing(blocks)
    expect(fits.reduce((sum, { weight }) => sum + (weight ?? 0), 0)).toBeCloseTo(1, 12)
    const [log, root] = ['log-time', 'square-root-time'].map((name) => fits.find(({ model }) => model === name)!)
    const criteria = [log!, root!].map((one) => (one.fit as AgeingFit).aicc!)
    expect(log!.weight! / root!.weight!).toBeCloseTo(Math.exp((criteria[1]! - criteria[0]!) / 2), 10)
  })

  it('leave one out that cannot be fitted', () => {
    expect(fitAllAgeing(blocks.slice(0, 6)).map(({ weight }) => weight === null)).toEqual([
      false,
      false,
      false,
      false,
      true,
    ])
    expect(weightedFits(fitAllAgeing(blocks.slice(0, 6)))).toHaveLength(4)
  })
})
