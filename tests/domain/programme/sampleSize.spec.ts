import { describe, expect, it } from 'vitest'
import {
  blocksForPower,
  detectableDifference,
  mostBlocks,
  type PlannedTest,
  powerToFind,
} from '#domain/programme/sampleSize.ts'

const pair: PlannedTest = { comparison: 'pair', groups: 2, confidence: 0.95 }
const any = (groups: number, confidence = 0.95): PlannedTest => ({ comparison: 'any', groups, confidence })
const relativeError = (value: number | null, expected: number) => Math.abs(value! / expected - 1)

describe('the power of two groups', () => {
  // R 4.2.2: power.t.test(n, delta, sd = 1, sig.level, strict = TRUE)$power
  it.each([
    [20, 1, 0.95, 0.8689530277245856],
    [2, 1, 0.95, 0.09520175549797283],
    [7.5, 0.8, 0.99, 0.1121115005562818],
  ])('with %d blocks a group and %d SDs is that of power.t.test', (n, difference, confidence, power) => {
    expect(relativeError(powerToFind({ ...pair, confidence }, n, difference), power)).toBeLessThan(1e-9)
  })

  it('does not depend on the number of groups', () => {
    expect(powerToFind({ ...pair, groups: 60 }, 10, 1)).toBe(powerToFind(pair, 10, 1))
  })

  it('is the chance of a false alarm where there is no difference', () => {
    expect(powerToFind(pair, 10, 0)).toBeCloseTo(0.05, 12)
  })
})

describe('the power of one test of all groups', () => {
  // R 4.2.2: power.anova.test(groups = k, n, between.var = d^2 / 2 / (k - 1), within.var = 1, sig.level)$power. R's pf of a
  // noncentral variable is good to some 1e-9 (scipy.stats.ncf.sf, which is not, agrees with ours in 15 digits).
  it.each([
    [6, 10, 1.2, 0.95, 0.467976421130376],
    [60, 12, 2, 0.99, 0.3304846057647975],
  ])('of %d groups of %d blocks and %d SDs is that of power.anova.test', (k, n, difference, confidence, power) => {
    expect(relativeError(powerToFind(any(k, confidence), n, difference), power)).toBeLessThan(1e-7)
  })
})

describe('the blocks that are needed', () => {
  // R 4.2.2: power.t.test(power, delta, sd = 1, strict = TRUE, tol = 1e-12)$n
  it.each([
    [1, 0.9, 22.02108842637363],
    [0.8, 0.8, 25.52457183574113],
    [0.1, 0.9, 2102.444710096036],
  ])('for %d SDs and a power of %d are those of power.t.test', (difference, power, n) => {
    expect(relativeError(blocksForPower(pair, difference, power), n)).toBeLessThan(1e-8)
  })

  it('for all groups at once are those of power.anova.test', () => {
    // R 4.2.2: power.anova.test(groups = 4, between.var = 1, within.var = 3, power = 0.80)$n; between.var is d^2 / 2 / (k - 1).
    expect(blocksForPower(any(4), Math.sqrt(2), 0.8)).toBeCloseTo(11.92613, 4)
  })

  it('are never fewer than two, and null where nobody could make so many', () => {
    expect(blocksForPower(pair, 100, 0.9)).toBe(2)
    expect(blocksForPower(pair, 1e-4, 0.9)).toBeNull()
    expect(blocksForPower(pair, Math.sqrt(20 / mostBlocks), 0.8)).toBeGreaterThan(mostBlocks / 2)
  })
})

describe('the smallest difference', () => {
  // R 4.2.2: power.t.test(n, power, strict = TRUE, tol = 1e-12)$delta
  it.each([
    [12, 0.9, 1.385159822880253],
    [3, 0.8, 3.070892266360088],
  ])('that %d blocks a group find with a power of %d is that of power.t.test', (n, power, difference) => {
    expect(relativeError(detectableDifference(pair, n, power), difference)).toBeLessThan(1e-8)
  })

  it('is that with which the power comes out again, with all groups too', () => {
    const difference = detectableDifference(any(60), 12, 0.8)!
    expect(powerToFind(any(60), 12, difference)).toBeCloseTo(0.8, 10)
  })

  it('is none at all for the power of a false alarm', () => {
    expect(detectableDifference(pair, 10, 0.05)).toBe(0)
    expect(detectableDifference(pair, 10, 0.051)).toBeGreaterThan(0)
  })
})

it('refuses fewer than two blocks a group', () => {
  expect(() => powerToFind(pair, 1.9, 1)).toThrow(RangeError)
})
