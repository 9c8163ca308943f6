import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createSteadinessWatch } from '#domain/signal/rest/steadiness.ts'

const options = { windowS: 1, leastReadings: 5, allowedChange: 0 }

function watchOf(rateHz: number, lengthS: number, force: (timeS: number) => number) {
  const watch = createSteadinessWatch(options)
  for (let i = 0; i <= lengthS * rateHz; i++) watch.push(i / rateHz, force(i / rateHz))
  return watch.judge()
}

describe('mean and SD of the window', () => {
  it.each([
    // NIST StRD univariate, certified mean and SD: alternating values about a large offset.
    ['NumAcc1', [10_000_001, 10_000_003, 10_000_002], 10_000_002, 1, 9],
    ['NumAcc2', [1.2, ...Array.from({ length: 500 }, () => [1.1, 1.3]).flat()], 1.2, 0.1, 12],
    [
      'NumAcc3',
      [1_000_000.2, ...Array.from({ length: 500 }, () => [1_000_000.1, 1_000_000.3]).flat()],
      1_000_000.2,
      0.1,
      8,
    ],
    [
      'NumAcc4',
      [10_000_000.2, ...Array.from({ length: 500 }, () => [10_000_000.1, 10_000_000.3]).flat()],
      10_000_000.2,
      0.1,
      7,
    ],
  ])('%s as certified', (_name, values, mean, sd, digits) => {
    const watch = createSteadinessWatch(options)
    values.forEach((value, i) => {
      watch.push(i / 1001, value)
    })
    const judged = watch.judge()
    expect(judged.readings).toBe(values.length)
    expect(judged.mean! / mean).toBeCloseTo(1, 14)
    expect(Math.abs(judged.sd! - sd)).toBeLessThan(10 ** -digits)
  })
})

describe('steady enough for a zero', () => {
  it.each([10, 80, 1000])('is a signal at rest with noise at %i Hz, nearly always', (rateHz) => {
    let steady = 0
    for (let seed = 1; seed <= 100; seed++) {
      const random = createRandom(seed)
      if (watchOf(rateHz, 3, () => 7 + random.normal()).unsteadyBecause === null) steady += 1
    }
    expect(steady).toBeGreaterThanOrEqual(95)
  })

  it('is a signal that never changes', () => {
    expect(watchOf(80, 2, () => 42)).toMatchObject({ mean: 42, sd: 0, unsteadyBecause: null })
  })

  it('is not one that moves, and it says which way', () => {
    const random = createRandom(1)
    expect(watchOf(80, 3, (t) => 50 * t + random.normal()).unsteadyBecause).toBe('the force is still rising')
    expect(watchOf(80, 3, (t) => -50 * t + random.normal()).unsteadyBecause).toBe('the force is still falling')
  })

  it('is not one that was knocked', () => {
    const random = createRandom(2)
    const knock = (t: number) => (t > 2.5 && t < 2.6 ? 200 * Math.sin(2 * Math.PI * 40 * t) : 0)
    expect(watchOf(1000, 3, (t) => knock(t) + random.normal()).unsteadyBecause).toContain('disturbs')
  })

  it('is not one of which too little was seen', () => {
    expect(createSteadinessWatch(options).judge()).toEqual({
      mean: null,
      sd: null,
      readings: 0,
      unsteadyBecause: 'there are no readings yet',
    })
    expect(watchOf(80, 0.03, () => 1).unsteadyBecause).toBe('there are too few readings yet (3 of 5)')
    expect(watchOf(80, 0.5, () => 1).unsteadyBecause).toBe('the signal has not been watched long enough yet')
  })

  it('forgets what lay before a silence', () => {
    const watch = createSteadinessWatch(options)
    for (let i = 0; i < 100; i++) watch.push(i / 80, 500)
    watch.push(60, 3)
    expect(watch.judge().readings).toBe(1)
  })
})
