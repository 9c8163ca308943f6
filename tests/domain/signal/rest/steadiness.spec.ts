import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createSteadinessWatch } from '#domain/signal/rest/steadiness.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

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
      swing: null,
      unsteadyBecause: 'there are no readings yet',
    })
    const watch = createSteadinessWatch(options)
    watch.push(0, 7)
    expect(watch.judge()).toMatchObject({ mean: null, sd: null, readings: 1 })
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

describe('the swing of a signal', () => {
  it('is nothing where noise explains it, nearly always', () => {
    for (const rateHz of [10, 80, 1000])
      for (let seed = 1; seed <= 30; seed++) {
        const random = createRandom(seed)
        expect(watchOf(rateHz, 3, () => 7 + random.normal()).swing).toBe(0)
      }
    expect(watchOf(80, 2, () => 42).swing).toBe(0)
    // Before the window is full, too.
    expect(watchOf(80, 0.4, () => 42).swing).toBe(0)
    const watch = createSteadinessWatch(options)
    for (const timeS of [0, 0.01]) watch.push(timeS, 42)
    expect(watch.judge().swing).toBe(0)
  })

  it('is the amplitude of a slow sine, though it ends where it began', () => {
    for (const phase of [0, 1, 2, 3]) {
      const { swing } = watchOf(1000, 3, (t) => 200 * Math.sin(2 * Math.PI * t + phase))
      // 62 samples a block, in which the sine goes by 200 sqrt(2) pi / 16 / sqrt(12) about its mean: five standard errors are 10.
      expect(swing! / 190).toBeGreaterThan(0.97)
      expect(swing! / 190).toBeLessThan(1.03)
    }
  })

  it('is by how much a block is off beyond five standard errors of its mean', () => {
    // Alternating by one either way, a hundred in each of sixteen blocks, one of which lies higher.
    const swung = (by: number, block = 8) => {
      const watch = createSteadinessWatch(options)
      for (let i = 0; i < 1600; i++)
        watch.push(i / 1600, (i % 2 === 0 ? 1 : -1) + (Math.floor(i / 100) === block ? by : 0))
      return watch.judge().swing!
    }
    const error = 5 * Math.sqrt((1600 / 1584) * (1 / 100))
    expect(limitOf((by) => swung(by) > 0, 0.1, 2)).toBeCloseTo(error / (15 / 16), 3)
    expect(swung(3)).toBeCloseTo((3 * 15) / 16 - error, 6)
    expect(swung(-3)).toBeCloseTo(swung(3), 6)
    for (const block of [0, 15]) expect(swung(3, block)).toBeCloseTo(swung(3), 6)
  })
})

describe('the limits of steadiness', () => {
  const judged = (
    values: (i: number) => number,
    count: number,
    rateHz: number,
    given: Partial<typeof options> = {},
  ) => {
    const watch = createSteadinessWatch({ ...options, ...given })
    for (let i = 0; i < count; i++) watch.push(i / rateHz, values(i))
    return watch.judge().unsteadyBecause
  }

  it('are as many readings as asked for, over 0.8 of the window', () => {
    expect(judged(() => 1, 4, 4)).toContain('4 of 5')
    expect(judged(() => 1, 5, 4)).toBeNull()
    expect(judged(() => 1, 5, 5)).toBeNull()
    expect(judged(() => 1, 9, 10.1)).toContain('not been watched')
    expect(judged(() => 1, 9, 10)).toBeNull()
    expect(judged(() => 1, 2, 1, { leastReadings: 2 })).toBeNull()
    expect(judged(() => 1, 1, 1, { leastReadings: 2 })).toContain('1 of 2')
  })

  it('are a change of what is allowed from the first quarter to the last', () => {
    // 1600 readings a second and blocks of 100: a slope without noise changes by 12/16 of itself, but for its noise within blocks.
    const change = (slope: number, allowedChange: number) =>
      judged((i) => slope * Math.floor(i / 100), 1600, 1600, { allowedChange }) === null
    expect(judged((i) => 0.001 * Math.floor(i / 100), 1600, 1600)).toContain('rising')
    // Levels 0 to 15 times the slope: the first four blocks have 1.5, the last four 13.5.
    expect(limitOf((slope) => change(slope, 6), 0.1, 2)).toBeCloseTo(6 / 12, 4)
    expect([6 / 12.1, -6 / 12.1].map((slope) => change(slope, 6))).toEqual([true, true])
  })

  it('are five standard errors of the means of the quarters, by the noise within blocks', () => {
    // Alternating by one either way, a hundred in each block: variance 1 within blocks but for one in a hundred; each quarter has 400.
    const moved = (by: number) => judged((i) => (i % 2 === 0 ? 1 : -1) + (i < 800 ? 0 : by), 1600, 1600) !== null
    const se = Math.sqrt((1600 / 1584) * (2 / 400))
    expect(limitOf(moved, 0.05, 2)).toBeCloseTo(5 * se, 3)
  })

  it('are told by neighbouring blocks where these hold few readings', () => {
    // Two in each block, alternating means: half the mean squared step of 2, weighted by their counts, is the variance of one reading.
    for (const unit of [1, 0.01]) {
      const moved = (by: number) =>
        judged((i) => unit * ((Math.floor(i / 2) % 2 === 0 ? 1 : -1) + (i < 16 ? 0 : by)), 32, 32) !== null
      const limit = limitOf(moved, 0.5, 40)
      // Fourteen steps of 2 and one of 2 + by, over 1/2 + 1/2; the quarters have 8 each.
      const variance = (14 * 4 + (2 + limit) ** 2) / 15
      expect(limit / (5 * Math.sqrt(variance * (2 / 8)))).toBeCloseTo(1, 2)
    }
  })

  it('are told within blocks from more than two readings in each on', () => {
    // 1, -1, 0 in each block: variance 1 within, whatever their levels; each quarter has 12.
    const moved = (by: number) => judged((i) => (i % 3 < 2 ? 1 - 2 * (i % 3) : 0) + (i < 24 ? 0 : by), 48, 48) !== null
    expect(limitOf(moved, 0.1, 9)).toBeCloseTo(5 * Math.sqrt(2 / 12), 3)
  })

  it('are judged by single blocks where they are few', () => {
    const few = (values: readonly number[], rateHz: number) =>
      judged((i) => values[i]!, values.length, rateHz, { leastReadings: 2 })
    // Steps of 1 from block to block: variance 1/2, and five standard errors of a difference of two readings are 5.
    expect(few([0, 1], 1.2)).toBeNull()
    expect(few([0, 1, 2, 3, 4, 4.9], 6)).toBeNull()
    expect(few([0, 1, 2, 3, 4, 5, 6], 7)).toContain('rising')
    // Three bursts of ten readings, the last of them off by ten.
    const watch = createSteadinessWatch(options)
    for (let i = 0; i < 30; i++)
      watch.push(0.4 * Math.floor(i / 10) + 0.001 * (i % 10), (i % 2 === 0 ? 1 : -1) + (i < 20 ? 0 : 10))
    expect(watch.judge().unsteadyBecause).toContain('rising')
  })

  it('are a second, five readings and no change beyond the noise unless others are asked for', () => {
    const usual = (times: readonly number[], force: (timeS: number) => number = () => 7) => {
      const watch = createSteadinessWatch()
      for (const timeS of times) watch.push(timeS, force(timeS))
      return watch.judge().unsteadyBecause
    }
    expect(usual([0, 0.2, 0.4, 0.6, 0.8])).toBeNull()
    expect(usual([0, 0.2, 0.4, 0.8])).toContain('4 of 5')
    expect(usual([0, 0.2, 0.4, 0.6, 0.79])).toContain('not been watched')
    const many = Array.from({ length: 100 }, (_, i) => i / 100)
    expect(usual(many, (t) => (t < 0.5 ? 0 : 0.9))).toContain('rising')
  })

  it('are four times the usual noise of a block in one of them', () => {
    const disturbed = (factor: number) =>
      judged((i) => (i % 2 === 0 ? 1 : -1) * (i >= 800 && i < 900 ? factor : 1), 1600, 1600) !== null
    expect(limitOf(disturbed, 2, 8)).toBeCloseTo(4, 3)
    expect(disturbed(4)).toBe(false)
  })

  it('need a window and two readings', () => {
    for (const given of [{ windowS: 0 }, { windowS: Number.NaN }, { leastReadings: 1 }])
      expect(() => createSteadinessWatch({ ...options, ...given })).toThrow(RangeError)
    expect(() => createSteadinessWatch({ ...options, windowS: 0.5, leastReadings: 2 })).not.toThrow()
  })
})

describe('a disturbance', () => {
  type Block = { readings: number; amplitude: number }
  /** Blocks of a sixteenth of a second, whose readings alternate by their amplitude; what is said of them. */
  const judged = (blocks: readonly Block[]) => {
    const watch = createSteadinessWatch(options)
    for (const [k, { readings, amplitude }] of blocks.entries())
      for (let i = 0; i < readings; i++) watch.push(k / 16 + i / 16_000, i % 2 === 0 ? amplitude : -amplitude)
    return watch.judge().unsteadyBecause
  }
  const disturbed = (blocks: readonly Block[]) => judged(blocks)?.includes('disturbs') ?? false
  const quiet = (count: number, readings = 10, amplitude = 1) =>
    Array.from({ length: count }, (): Block => ({ readings, amplitude }))

  it('shows in a block of four readings, and not in one of three', () => {
    const withLoud = (readings: number) => disturbed([...quiet(15), { readings, amplitude: 100 }])
    expect([3, 4].map(withLoud)).toEqual([false, true])
  })

  it('is measured by the sample SD of a block', () => {
    // Four readings of f either way have SD f sqrt(4/3); a hundred of 1 have sqrt(100/99).
    const limit = limitOf((amplitude) => disturbed([...quiet(15, 100), { readings: 4, amplitude }]), 1, 20)
    expect(limit).toBeCloseTo(4 * Math.sqrt(100 / 99) * Math.sqrt(3 / 4), 3)
  })

  it('needs four blocks to compare', () => {
    const among = (count: number) =>
      disturbed([...quiet(count - 1, 60), { readings: 60, amplitude: 100 }, ...quiet(16 - count, 2)])
    expect([3, 4, 5].map(among)).toEqual([false, true, true])
  })

  it('is told by the middle of the blocks, the upper of two', () => {
    const loud = (count: number) => disturbed([...quiet(16 - count), ...quiet(count, 10, 100)])
    expect([7, 8].map(loud)).toEqual([true, false])
  })

  it('is looked for with more than four readings a block', () => {
    expect(disturbed([...quiet(15, 4), { readings: 4, amplitude: 100 }])).toBe(false)
    expect(disturbed([...quiet(14, 4), ...quiet(1, 5), { readings: 4, amplitude: 100 }])).toBe(true)
  })

  it('is none where most blocks stand quite still: a last digit that moves now and then', () => {
    expect(disturbed([...quiet(15, 10, 0), { readings: 10, amplitude: 1 }])).toBe(false)
    expect(disturbed([...quiet(15, 10, 0.3), { readings: 10, amplitude: 30 }])).toBe(true)
  })
})
