import { describe, expect, it } from 'vitest'
import { overallStanding } from '#domain/findings/overall.ts'

const loft = { name: 'loft', weight: 2, strengths: [9.1, 10.2, 8.7, 9.9], reference: [8.0, 8.8, 7.9, 8.1, 8.4] }
const bilge = { name: 'bilge', weight: 1, strengths: [4.1, 5.2, 4.4], reference: [5.0, 5.9, 5.1, 5.6] }

describe('standing across conditions', () => {
  // R 4.2.2: numericDeriv of (2 m1/m2 + m3/m4)/3 over the means, their variances, and the degrees of freedom of Welch and Satterthwaite.
  it('is the weighted mean of the ratios, with the interval that R finds', () => {
    const { ratio, low, high } = overallStanding([loft, bilge], 0.95)
    expect(ratio).toBeCloseTo(1.048478765, 8)
    expect(low).toBeCloseTo(0.957131796, 6)
    expect(high).toBeCloseTo(1.139825734, 6)
  })

  it('does not depend on how strong a condition leaves everything', () => {
    const weaker = {
      ...bilge,
      strengths: bilge.strengths.map((y) => y / 10),
      reference: bilge.reference.map((y) => y / 10),
    }
    expect(overallStanding([loft, weaker], 0.95).ratio).toBeCloseTo(overallStanding([loft, bilge], 0.95).ratio!, 12)
  })

  it('names the conditions in which a block is missing, and leaves them out', () => {
    const found = overallStanding([loft, { ...bilge, strengths: [] }], 0.95)
    expect(found.missing).toEqual(['bilge'])
    expect(found.ratio).toBeCloseTo(overallStanding([loft], 0.95).ratio!, 12)
  })

  it('has no interval where a mean rests on one block, and no ratio where nothing is there', () => {
    expect(overallStanding([{ ...loft, strengths: [9] }], 0.95)).toMatchObject({ ratio: expect.any(Number), low: null })
    expect(overallStanding([{ ...loft, reference: [] }], 0.95)).toMatchObject({ ratio: null, missing: ['loft'] })
  })

  it('refuses a negative weight', () => {
    expect(() => overallStanding([{ ...loft, weight: -1 }], 0.95)).toThrow(RangeError)
  })
})
