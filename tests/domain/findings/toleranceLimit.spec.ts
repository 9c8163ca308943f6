import { describe, expect, it } from 'vitest'
import { toleranceFactor, toleranceOrder } from '#domain/findings/toleranceLimit.ts'

describe('the lower tolerance limit of normal values', () => {
  // ASTM D2915 (from memory) and R 4.2.2: qt(conf, n - 1, qnorm(p) sqrt(n)) / sqrt(n), which scipy's nct confirms.
  it.each([
    [5, 0.75, 0.95, 2.46338],
    [10, 0.75, 0.95, 2.10367],
    [20, 0.75, 0.95, 1.93196],
    [10, 0.95, 0.95, 2.91096],
    [3, 0.95, 0.99, 10.55273],
    [100, 0.9, 0.95, 1.86125],
  ])('of %d blocks at confidence %d for a share of %d lies so many SDs below the mean', (n, confidence, content, k) => {
    expect(toleranceFactor(n, { confidence, content })).toBeCloseTo(k, 4)
  })

  it('is refused for one block', () => {
    expect(() => toleranceFactor(1, { confidence: 0.75, content: 0.95 })).toThrow(RangeError)
  })
})

describe('the lower tolerance limit without an assumption', () => {
  // ASTM D2915: least n for the first to fifth weakest at 75 %: 28, 53, 78, 102, 125; at 95 %: 59, 93, 124.
  it.each([
    [0.75, [28, 53, 78, 102, 125]],
    [0.95, [59, 93, 124]],
  ])('at confidence %d takes the next weakest from the n of D2915 on', (confidence, leasts) => {
    for (const [i, n] of leasts.entries()) {
      expect(toleranceOrder(n, { confidence, content: 0.95 })).toBe(i + 1)
      expect(toleranceOrder(n - 1, { confidence, content: 0.95 })).toBe(i)
    }
  })
})
