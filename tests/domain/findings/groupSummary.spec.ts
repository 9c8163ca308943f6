import { describe, expect, it } from 'vitest'
import { groupSummary } from '#domain/findings/groupSummary.ts'
import type { Observation, Treatment } from '#domain/findings/observation.ts'
import { block, handbookGroups } from './knownStudies.ts'

const terms = { confidence: 0.95, tolerance: { confidence: 0.75, content: 0.95 } }
const observed: Treatment = { woodFailure: 'observed', limitPercent: 75, adjustFactor: 1 }
const summary = (counted: Observation[], treatment = observed) =>
  groupSummary({ group: 'G', ageMonths: null, counted, excluded: 2 }, treatment, terms)

describe('the summary of a group', () => {
  it('is that of R for the first group of the handbook', () => {
    // R 4.2.2: mean, sd, t.test()$conf.int, quantile(type = 7); k = 2.46338 of D2915
    const found = summary([...handbookGroups[0]!.values].map((strengthMPa) => block({ strengthMPa })))
    expect(found).toMatchObject({
      n: 5,
      excluded: 2,
      censored: 0,
      medianMPa: 5.4,
      q1MPa: 4.6,
      q3MPa: 5.8,
      minMPa: 4,
      maxMPa: 6.9,
    })
    expect(found.meanMPa).toBeCloseTo(5.34, 12)
    expect(found.sdMPa).toBeCloseTo(1.1171392, 7)
    expect(found.cvPercent).toBeCloseTo(20.9202, 4)
    expect(found.meanLowMPa).toBeCloseTo(3.952888, 6)
    expect(found.meanHighMPa).toBeCloseTo(6.727112, 6)
    expect(found.lowerToleranceMPa).toBeCloseTo(5.34 - 2.46338 * 1.1171392, 4)
    expect(found.lowerToleranceNonparametricMPa).toBeNull()
  })

  it('takes the weakest of 28 as a limit without an assumption', () => {
    const blocks = Array.from({ length: 28 }, (_, i) => block({ strengthMPa: 5 + i }))
    expect(summary(blocks).lowerToleranceNonparametricMPa).toBe(5)
  })

  it('has nothing but the value of one block, and nothing at all of none', () => {
    expect(summary([block({ strengthMPa: 7 })])).toMatchObject({
      n: 1,
      meanMPa: 7,
      sdMPa: null,
      meanLowMPa: null,
      lowerToleranceMPa: null,
    })
    expect(summary([])).toMatchObject({ n: 0, meanMPa: null, medianMPa: null, minMPa: null })
  })

  it('has torn wood over the blocks for which it was recorded', () => {
    const found = summary([100, 50, null].map((woodFailurePercent) => block({ strengthMPa: 7, woodFailurePercent })))
    expect(found).toMatchObject({ woodFailureMeanPercent: 75, allWoodSharePercent: 50 })
    expect(summary([block({ strengthMPa: 7 })])).toMatchObject({
      woodFailureMeanPercent: null,
      allWoodSharePercent: null,
    })
  })

  it('counts wood failures as censored where they are treated so, and only there', () => {
    const blocks = [75, 74].map((woodFailurePercent) => block({ strengthMPa: 7, woodFailurePercent }))
    expect(summary(blocks, { ...observed, woodFailure: 'censored' })).toMatchObject({ n: 2, censored: 1 })
    expect(summary(blocks, { ...observed, woodFailure: 'bond-only' })).toMatchObject({ n: 1, censored: 0 })
  })
})
