import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { seatingEndS } from '#domain/signal/events/seating.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

const sampled = (force: (timeS: number) => number, lengthS = 20) => {
  const timeS = Float64Array.from({ length: 200 }, (_, i) => (i * lengthS) / 200)
  return { timeS, force: timeS.map(force) }
}

/** Slope that grows evenly for `toeS`, then stays: a parabola and the line that touches its end. */
const toe = (toeS: number, slope: number) => (t: number) =>
  t < toeS ? (slope * t * t) / (2 * toeS) : slope * (t - toeS / 2)

describe('seating', () => {
  it.each([1.5, 2, 3])(
    'of %f s in 20 s ends where the slope stops growing, within a stretch and the 15 %% below it',
    (toeS) => {
      const endS = seatingEndS(sampled(toe(toeS, 300)), 0)!
      expect(endS).toBeGreaterThan(0.85 * toeS - 0.5)
      expect(endS).toBeLessThan(toeS + 0.75)
    },
  )

  it('is not seen in a straight line, in a pumped load, or in a few samples', () => {
    const pumped = sampled((t) => 300 * Math.floor(t) + (t % 1 > 0.5 ? 300 : 0))
    expect(
      seatingEndS(
        sampled((t) => 300 * t),
        0,
      ),
    ).toBeNull()
    expect(seatingEndS(pumped, 0)).toBeNull()
    expect(seatingEndS(pumped, 60)).toBeNull()
    expect(seatingEndS({ timeS: Float64Array.of(0, 1, 2), force: Float64Array.of(0, 1, 4) }, 0)).toBeNull()
    expect(
      seatingEndS(
        sampled((t) => 300 * t, 0),
        0,
      ),
    ).toBeNull()
  })

  it('ends in the stretch whose slope reaches 0.85 of the seated one, also where samples are missing later', () => {
    // In 40 stretches of half a second the slope from the middle of one to that of the next is 300 N/s x t / 4 s at their
    // border t: 221 N/s at 2.95 s, 259 N/s at 3.45 s, of which 255 N/s are wanted. It starts from the middle of five samples, 3.2 s.
    const whole = sampled(toe(4, 300))
    expect(seatingEndS(whole, 0)).toBeCloseTo(3.2, 9)
    const kept = [...whole.timeS.keys()].filter((i) => whole.timeS[i]! < 6 || whole.timeS[i]! > 10.5)
    const pick = (values: Float64Array) => Float64Array.from(kept, (i) => values[i]!)
    expect(seatingEndS({ timeS: pick(whole.timeS), force: pick(whole.force) }, 0)).toBe(seatingEndS(whole, 0))
  })

  it('is judged by the median slope, whatever the load does for a while', () => {
    const steady = toe(4, 300)
    // 100 N/s for a second in the middle of the part that is looked at.
    const slowed = sampled((t) => steady(t) - 200 * Math.min(1, Math.max(0, t - 7.46)))
    expect(seatingEndS(slowed, 0)).toBeCloseTo(3.2, 9)
  })

  it('is not ended by a jolt in it', () => {
    // 100 N at once between two stretches: 73, 310 and 147 N/s on end, of which the middle one is 147 N/s.
    const jolted = sampled((t) => toe(4, 300)(t) + (t > 1.45 ? 100 : 0))
    expect(seatingEndS(jolted, 0)).toBeCloseTo(3.2, 9)
  })

  it('is the same on a curve that begins later', () => {
    const { timeS, force } = sampled(toe(4, 300))
    expect(seatingEndS({ timeS: timeS.map((t) => t + 50), force }, 0)).toBeCloseTo(53.2, 9)
  })

  it('begins below 0.65 of the seated slope', () => {
    const slack = (share: number) => sampled((t) => (t < 3 ? share * 300 * t : share * 900 + 300 * (t - 3)))
    expect(Math.abs(seatingEndS(slack(0.6), 0)! - 3)).toBeLessThan(0.5)
    expect(seatingEndS(slack(0.7), 0)).toBeNull()
  })

  it('is seen in fewer, longer stretches where the noise is large or the means are few', () => {
    const random = createRandom(4)
    const { timeS, force } = sampled(toe(4, 300))
    // In 40 stretches of 5 means each, noise of 120 is as large as half of the slope.
    const noisy = { timeS, force: force.map((value) => value + 120 * random.normal()) }
    expect(seatingEndS(noisy, 120)).toBeGreaterThan(0.85 * 4 - 1.5)
    expect(seatingEndS(noisy, 120)).toBeLessThan(4 + 2)
    const few = { timeS: timeS.filter((_, i) => i % 8 === 0), force: force.filter((_, i) => i % 8 === 0) }
    expect(few.timeS).toHaveLength(25)
    expect(seatingEndS(few, 0)).toBeGreaterThan(0.85 * 4 - 1)
  })

  it('is not taken from noise on a straight line', () => {
    const random = createRandom(9)
    const found = Array.from({ length: 300 }, () => {
      const { timeS, force } = sampled((t) => 300 * t)
      return seatingEndS({ timeS, force: force.map((value) => value + 90 * random.normal()) }, 90)
    })
    expect(found.filter((endS) => endS !== null).length).toBeLessThanOrEqual(3)
  })
})

/** A curve of so many single samples as there are stretches, a second apart, with the slopes between them as given. */
const withSlopes = (slopes: readonly number[], intervalS = 1) => {
  const force = new Float64Array(slopes.length + 1)
  for (const [k, slope] of slopes.entries()) force[k + 1] = force[k]! + slope * intervalS
  return { timeS: force.map((_, i) => i * intervalS), force }
}
const steps = (...parts: readonly (readonly [count: number, slope: number])[]) =>
  parts.flatMap(([count, slope]) => Array<number>(count).fill(slope))

describe('the slopes that seating is told from', () => {
  it.each([40, 28, 20, 14, 10])('are those of %i stretches where there are as many samples', (count) => {
    // Every sample is a stretch then, and the slope is the seated one from wherever it begins to be; of stretches that are fewer
    // some hold two samples, and some place lies at none.
    for (let seatedAt = 2; seatedAt <= count / 5; seatedAt++)
      expect(seatingEndS(withSlopes(steps([seatedAt, 6], [count - 1 - seatedAt, 20])), 0)).toBe(seatedAt)
  })

  it('are as good in half a second as in half a minute', () => {
    expect(seatingEndS(withSlopes(steps([2, 6], [37, 20]), 1 / 64), 0)).toBe(2 / 64)
    expect(seatingEndS(withSlopes(steps([2, 0.1], [37, 0.5])), 0)).toBe(2)
  })

  it('are each the middle one of three neighbours', () => {
    expect(seatingEndS(withSlopes([6, 6, 20, 6, ...steps([35, 20])]), 0)).toBe(3)
    expect(seatingEndS(withSlopes([6, 6, 20, 20, 6, ...steps([34, 20])]), 0)).toBe(2)
  })

  it('have noise of a tenth of the seated one at most, else fewer stretches are taken', () => {
    // The fewest are 10, of four samples each: σ sqrt(2 · 10 / 40) · 10 / 39 s = 0.18131 σ; a tenth of 20 N/s at σ = 11.031 N.
    const slack = withSlopes(steps([6, 6], [33, 20]))
    expect(limitOf((noise) => seatingEndS(slack, noise) !== null, 3, 30)).toBeCloseTo(2 / (Math.SQRT1_2 * (10 / 39)), 3)
  })

  it('are compared with the median of those from 0.2 to 0.6 of the loading', () => {
    // 39 slopes, of which the 8th to the 24th count: 17, with the 9th in order as their median. Eight slow ones and the ninth
    // between: seated is 20 N/s, and no more than that lie between the 10th and the 90th percentile. Nine slow ones: it is 10 N/s.
    const slowFor = (count: number, between: number[]) =>
      seatingEndS(withSlopes([...steps([7 + count, 10]), ...between, ...steps([32 - count - between.length, 30])]), 0)
    expect(slowFor(8, [20])).toBe(15)
    expect(slowFor(9, [20])).toBeNull()
  })

  it('differ by no more than their median from the 10th to the 90th percentile, but for noise', () => {
    const differing = (fast: number, noise: number) =>
      seatingEndS(withSlopes(steps([4, 6], [15, 20], [20, fast])), noise) !== null
    expect(limitOf((fast) => differing(fast, 0), 25, 60)).toBeCloseTo(40, 3)
    // 2.563 SDs of a slope of 1.4505 N/s each (R 2 * qnorm(0.9)).
    expect(limitOf((fast) => differing(fast, 1), 25, 60)).toBeCloseTo(40 + 2.563 * Math.SQRT2 * (40 / 39), 2)
  })

  it('differ only where three of the seventeen are fast, or two slow', () => {
    const with17 = (...odd: number[]) =>
      seatingEndS(withSlopes([...steps([4, 6], [8, 20]), ...odd, ...steps([27 - odd.length, 20])]), 0)
    expect(with17(90, 90)).toBe(4)
    expect(with17(90, 90, 90)).toBeNull()
    expect(with17(-30, -30)).toBeNull()
  })

  it('reach 0.85 of the seated one, from 0.65 of it or less', () => {
    const rising = (first: number, then: number) => seatingEndS(withSlopes(steps([3, first], [3, then], [33, 20])), 0)
    expect(limitOf((then) => rising(6, then) === 3, 14, 20)).toBeCloseTo(17, 3)
    expect(rising(6, 17)).toBe(3)
    expect(rising(13, 17)).toBe(3)
    expect(rising(13.001, 17)).toBeNull()
  })
})

/** As the rule says it, with all stretches laid out. */
function plainly({ timeS, force }: { timeS: Float64Array; force: Float64Array }, noise: number): number | null {
  const samples = [...timeS].map((t, i) => [t, force[i]!] as const)
  const [startS, lengthS] = [timeS[0]!, timeS.at(-1)! - timeS[0]!]
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  for (const n of [40, 28, 20, 14, 10]) {
    if (samples.length < n) continue
    const stretches = Array.from({ length: n }, (_, k) =>
      samples.filter(([t]) => (t - startS) / lengthS >= k / n && ((t - startS) / lengthS < (k + 1) / n || k === n - 1)),
    ).filter((members) => members.length > 0)
    if (stretches.length < n / 2) continue
    const middles = stretches.map((members) => mean(members.map(([t]) => t)))
    const loads = stretches.map((members) => mean(members.map(([, f]) => f)))
    const raw = loads.slice(1).map((load, k) => (load - loads[k]!) / (middles[k + 1]! - middles[k]!))
    const smooth = raw.map((slope, k) => {
      const three = [raw[k - 1] ?? slope, slope, raw[k + 1] ?? slope]
      return three.toSorted((a, b) => a - b)[1]!
    })
    const inOrder = smooth
      .slice(Math.floor(0.2 * smooth.length), Math.ceil(0.6 * smooth.length))
      .toSorted((a, b) => a - b)
    const seated = inOrder[Math.floor(inOrder.length / 2)]!
    const percentile = (share: number) => inOrder[Math.floor(share * (inOrder.length - 1))]!
    const slopeNoise = (noise * Math.sqrt((2 * n) / samples.length) * n) / lengthS
    if (seated <= 0 || percentile(0.9) - percentile(0.1) > seated + 2.563 * slopeNoise) return null
    if (slopeNoise > 0.1 * seated) continue
    const first = smooth.findIndex((slope) => slope >= 0.85 * seated)
    return raw[0]! > 0.65 * seated || first < 1 ? null : middles[first]!
  }
  return null
}

it('of random loads is what all stretches laid out say', () => {
  const random = createRandom(20)
  let found = 0
  for (let trial = 0; trial < 600; trial++) {
    const count = Math.floor(random.between(8, trial % 2 === 0 ? 60 : 400))
    const gaps = [0, 0.03, 0.4][trial % 3]!
    const swing = [0, 0.5, 1.5][trial % 5] ?? 0
    let t = random.between(-5, 5)
    const timeS = Float64Array.from({ length: count }, () => {
      t += random.unit() < gaps ? random.between(0, 60 / count) : random.between(1 / count, 20 / count)
      return t
    })
    const seatedS = random.between(0, 6)
    const slope = random.between(20, 300)
    const noise = slope * random.between(0, 0.6) ** 2
    const bend = random.between(-0.02, 0.03)
    const drawn = toe(seatedS, slope)
    const force = timeS.map((at) => {
      const since = at - timeS[0]!
      return drawn(since) * (1 + bend * since) + swing * slope * Math.sin(since) + noise * random.normal()
    })
    const expected = plainly({ timeS, force }, noise)
    const endS = seatingEndS({ timeS, force }, noise)
    if (expected === null) expect(endS).toBeNull()
    else expect(endS).toBeCloseTo(expected, 9)
    if (expected !== null) found += 1
  }
  expect(found).toBeGreaterThan(100)
})
