import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { meansBeforeBreak } from '#domain/signal/events/curvePart.ts'
import { edgeLevel } from '#domain/signal/events/drops/edgeLevel.ts'
import { findPartialDrops } from '#domain/signal/events/drops/partialDrops.ts'
import { bestStep, stepOverBend } from '#domain/signal/events/drops/stepFit.ts'
import type { LoadedCurve } from '#domain/signal/events/loadedCurve.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
import { madeCurve } from '#tests/fakes/madeCurve.ts'

/** The drops of a load given by time until a break, sampled at a rate with seeded noise. */
function dropsOf(rateHz: number, breakS: number, load: (timeS: number) => number, noise = 1) {
  const random = createRandom(6)
  const noisy = (t: number) => load(t) + noise * random.normal()
  return findPartialDrops(madeCurve(noisy, { intervalS: 1 / rateHz, endS: breakS + 1, breakS, noise }), noise)
}

/** 500 N/s, with sudden drops at times, each made good by the drive. */
const slipping = (drops: readonly (readonly [atS: number, dropN: number])[]) => (t: number) =>
  500 * t - drops.reduce((sum, [atS, dropN]) => sum + (t >= atS ? dropN : 0), 0)

describe('a partial drop', () => {
  it.each([10, 20, 80, 200])('of 10 %% is found at %i Hz, with its time and load', (rateHz) => {
    const [found, more] = dropsOf(rateHz, 10, slipping([[4.001, 200]]), 5)
    expect(more).toBeUndefined()
    expect(found!.startS).toBeLessThanOrEqual(4.001)
    expect(found!.downS).toBeGreaterThanOrEqual(4.001)
    expect(found!.downS - found!.startS).toBeLessThan(1.001 / rateHz)
    // Levels: 500 N/s and four errors of 5 N.
    expect(Math.abs(found!.from - 500 * found!.startS)).toBeLessThan(20)
    expect(Math.abs(found!.drop - (200 - 500 / rateHz))).toBeLessThan(28)
    // Half is made good after 0.2 s.
    expect(Math.abs(found!.recoveredS - 4.2)).toBeLessThan(0.05 + 1.5 / rateHz)
  })

  it('is found in noise of a sixth of it, 95 times of a hundred at least', () => {
    const random = createRandom(31)
    let found = 0
    for (let trial = 0; trial < 100; trial++) {
      const atS = 3 + random.unit()
      const load = (t: number) => 100 * t - (t >= atS ? 60 : 0) + 10 * random.normal()
      const curve = madeCurve(load, { intervalS: 1 / 80, endS: 8, breakS: 8, noise: 10 })
      const drops = findPartialDrops(curve, 10)
      expect(drops.length).toBeLessThanOrEqual(1)
      if (drops[0] !== undefined && Math.abs(drops[0].startS - atS) < 0.04) found += 1
    }
    expect(found).toBeGreaterThanOrEqual(95)
  })

  it('is found between two samples of a slow device, however far apart', () => {
    const [found, ...more] = dropsOf(4, 20, slipping([[10.1, 900]]))
    expect(more).toEqual([])
    expect([found!.startS, found!.downS]).toEqual([10, 10.25])
  })

  it('is one with what is seen of the next but one, and apart from what comes later', () => {
    const two = (apartS: number) =>
      dropsOf(
        10,
        20,
        slipping([
          [10.05, 400],
          [10.05 + apartS, 500],
        ]),
        0.01,
      ).length
    expect([0.2, 0.3].map(two)).toEqual([1, 2])
  })

  it('falls within 0.1 s, to the microsecond', () => {
    // Two steps of 3 % between three samples: seen at once they are 6 %.
    const inTwo = (intervalS: number) => {
      const load = (t: number) => 2000 + 40 * t - (t > 100.5 * intervalS ? 60 : 0) - (t > 101.5 * intervalS ? 60 : 0)
      return findPartialDrops(madeCurve(load, { intervalS, endS: 11, breakS: 11, noise: 0.01 }), 0.01).length
    }
    expect([0.05, 0.05025].map(inTwo)).toEqual([1, 0])
  })

  it('is half made good 35 ms after the fall at the soonest', () => {
    // Held at 3000 N, then driven at 5000 N/s in samples of 1 ms: half of 350 N takes 35 ms.
    const load = (dropN: number) => (t: number) => (t < 0.6005 ? 3000 : 3000 - dropN + 5000 * (t - 0.6005))
    const isDrop = (dropN: number) =>
      findPartialDrops(madeCurve(load(dropN), { intervalS: 0.001, endS: 1.2, breakS: 1.1, noise: 0.01 }), 0.01).length >
      0
    expect(Math.abs(limitOf(isDrop, 200, 500) - 350)).toBeLessThan(20)
  })

  it('is one of as many as there are', () => {
    const drops = [4, 5, 6, 7, 8].map((atS) => [atS + 0.001, 250] as const)
    const found = dropsOf(80, 10, slipping(drops))
    expect(found.map(({ startS }) => Math.round(startS))).toEqual([4, 5, 6, 7, 8])
  })

  it('is found where a sample fell into it', () => {
    const load = (t: number) => 500 * t - Math.min(1, Math.max(0, (t - 4) / 0.02)) * 300
    const [found] = dropsOf(100, 10, load)
    expect(found!.startS).toBeCloseTo(4, 9)
    expect(found!.downS).toBeCloseTo(4.02, 9)
    expect(Math.abs(found!.drop - 290)).toBeLessThan(5)
  })
})

// At 200 Hz the load is driven 2.5 N up while it drops.
describe('a partial drop counts', () => {
  const drops = (atS: number, dropN: number, noise = 0.01, zero = 0, perNewton = 1) => {
    const load = slipping([[atS, dropN + 2.5]])
    return findPartialDrops(
      madeCurve((t) => perNewton * (zero + load(t)), {
        ...{ intervalS: 0.005, endS: 11, breakS: 10 },
        ...{ noise: perNewton * noise, zero: perNewton * zero, peak: perNewton * (zero + 5000) },
      }),
      perNewton * noise,
    )
  }

  it('from 4.5 % of the load', () => {
    expect(drops(4.001, 0.043 * 2000)).toEqual([])
    expect(drops(4.001, 0.047 * 2000)).toHaveLength(1)
  })

  it('from 1 % of the peak', () => {
    // 4.5 % of 500 N would be 22.5 N.
    expect(drops(1.001, 47)).toEqual([])
    expect(drops(1.001, 53)).toHaveLength(1)
    // Above the level at rest, and in kilonewtons.
    expect([47, 53].map((dropN) => drops(1.001, dropN, 0.01, 1000).length)).toEqual([0, 1])
    const limitIn = (perNewton: number) =>
      limitOf((dropN) => drops(1.001, dropN, 0.01, 0, perNewton).length > 0, 45, 55)
    expect(limitIn(1 / 1024)).toBeCloseTo(limitIn(1), 3)
  })

  it('from five noise SDs of single samples', () => {
    expect(drops(2.001, 95, 20)).toEqual([])
    expect(drops(2.001, 105, 20)).toHaveLength(1)
  })

  it('as made good when half of it is', () => {
    // 400 N at 500 N/s.
    expect(drops(4.001, 400)[0]!.recoveredS).toBeCloseTo(4.405, 2)
  })
})

// A crack that runs through part of a bond may take a twentieth of a second; expected from the curve's own formula.
describe.each([80, 320, 1000])('a fall that takes its time, at %i Hz', (rateHz) => {
  const decay = (tauS: number, dropN: number) => (t: number) =>
    100 * t - (t < 10 ? 0 : dropN * (1 - Math.exp(-(t - 10) / tauS)))

  it.each([0.005, 0.01, 0.02, 0.03])('with a time constant of %f s is measured whole', (tauS) => {
    const [found, ...more] = dropsOf(rateHz, 20, decay(tauS, 200))
    expect(more).toEqual([])
    expect(Math.abs(found!.startS - 10)).toBeLessThan(0.01 + 1 / rateHz)
    // In 0.1 s a time constant of 0.03 s leaves 4 % of the fall, and the drive makes good 10 N.
    expect(found!.drop).toBeGreaterThan(0.8 * 200)
    expect(found!.drop).toBeLessThan(1.03 * 200)
  })

  it('and goes on at the same pace is a let-down', () => {
    // 900 N/s for 0.8 s: 9 % of the load in 0.1 s.
    const letDown = (t: number) => (t < 10 ? 100 * t : t < 10.8 ? 1000 - 900 * (t - 10) : 280 + 100 * (t - 10.8))
    expect(dropsOf(rateHz, 20, letDown)).toEqual([])
    // The same let go with a time constant, as a press does.
    expect(dropsOf(rateHz, 20, decay(0.4, 300))).toEqual([])
  })
})

describe('no partial drop', () => {
  it('is a knock that swings back', () => {
    const knock = (t: number) => (t > 5 ? -200 * Math.exp(-(t - 5) / 0.04) * Math.sin(2 * Math.PI * 30 * (t - 5)) : 0)
    expect(dropsOf(160, 10, (t) => 300 * t + knock(t))).toEqual([])
  })

  it('is a load that is back in full within 35 ms, though the same for longer is one', () => {
    const dipped = (lengthS: number) => (t: number) => 1000 + 50 * t - (t > 5 && t <= 5 + lengthS ? 400 : 0)
    expect(dropsOf(1000, 10, dipped(0.03))).toEqual([])
    expect(dropsOf(1000, 10, dipped(0.12))).toHaveLength(1)
  })

  it.each([10, 80, 160])('is relaxation between the strokes of a pump, at %i Hz', (rateHz) => {
    // Up for half a second, then 4 % let go with a time constant of 0.2 s.
    const pumped = (t: number) => {
      const stroke = Math.floor(t)
      const u = t - stroke
      const top = 500 * (stroke + 1)
      const bottom = 500 * stroke * (0.96 + 0.04 * Math.exp(-0.5 / 0.2))
      return u < 0.5 ? bottom + (top - bottom) * 2 * u : top * (0.96 + 0.04 * Math.exp(-(u - 0.5) / 0.2))
    }
    expect(dropsOf(rateHz, 12, pumped)).toEqual([])
    expect(dropsOf(rateHz, 12, pumped, 30)).toEqual([])
  })

  it('is noise, in twenty thousand points', () => {
    expect(dropsOf(100, 200, () => 40)).toEqual([])
    expect(dropsOf(100, 200, (t) => 20 * t, 40)).toEqual([])
  })

  it('is a step of a failure that goes on to the break', () => {
    const steps = (t: number) => 500 * t - [8, 8.1, 8.25].reduce((sum, at) => sum + (t >= at ? 400 : 0), 0)
    expect(dropsOf(160, 8.4, steps)).toEqual([])
  })

  it('is a load that is let go', () => {
    expect(dropsOf(20, 40, (t) => (t < 10 ? 500 * t : 5000 * Math.exp(-(t - 10) / 0.8)))).toEqual([])
  })

  it('is a gap in time', () => {
    const random = createRandom(9)
    const whole = madeCurve((t) => 500 * t + random.normal(), { intervalS: 0.0125, endS: 10, breakS: 10, noise: 1 })
    const kept = (_: number, i: number) => i < 300 || i > 340
    const curve = { ...whole, timeS: whole.timeS.filter(kept), force: whole.force.filter(kept) }
    expect(findPartialDrops(curve, 1)).toEqual([])
  })

  it('is found on a curve of a point or none', () => {
    for (const endS of [-1, 0, 0.1])
      expect(
        findPartialDrops(
          madeCurve(() => 5, { intervalS: 0.1, endS, peak: 5, peakS: 0 }),
          1,
        ),
      ).toEqual([])
  })
})

/** As the rules say it, from every place to every other. */
function plainly(curve: LoadedCurve, noise: number): { startS: number; downS: number; recoveredS: number }[] {
  const { timeS, force, zero, peak } = curve
  const count = meansBeforeBreak(curve)
  const meanWhere = (holds: (k: number) => boolean) => {
    const kept = [...timeS.keys()].filter((k) => k < count && holds(k))
    return kept.reduce((sum, k) => sum + force[k]!, 0) / kept.length
  }
  const places = Array.from({ length: count }, (_, k) => k)
  const before = places.map((i) => meanWhere((k) => k <= i && timeS[i]! - timeS[k]! < 0.03))
  const after = places.map((j) => meanWhere((k) => k >= j && timeS[k]! - timeS[j]! < 0.03))
  const upperLines = places.map((i) => edgeLevel(curve, count, i, 'before', noise, 0.04))
  const lowerLines = places.map((j) => edgeLevel(curve, count, j, 'after', noise, 0.04))
  type Fall = { i: number; j: number; errors: number; drop: number; from: number; to: number }
  function between(i: number, j: number): Fall | null {
    const seen = before[i]! - after[j]!
    const least = Math.max(0.01 * (peak - zero), 5 * curve.noise, 0.045 * (before[i]! - zero))
    const [upper, lower] = [upperLines[i]!, lowerLines[j]!]
    if (upper === null || lower === null) return null
    const pace = Math.min(0, upper.slope, lower.slope)
    const drop = upper.level + pace * (timeS[j]! - timeS[i]!) - lower.level
    const errors = drop / Math.hypot(upper.error, lower.error)
    if (drop < least || seen < 0.6 * Math.max(drop, least) || errors < 5.5) return null
    return { i, j, errors, drop, from: i - upper.points + 1, to: j + lower.points }
  }
  const all: Fall[] = []
  for (let i = 1; i <= count - 3; i++) {
    const own: Fall[] = []
    for (let j = i + 1; j <= count - 2; j++) {
      const fall = j === i + 1 || timeS[j]! - timeS[i]! <= 0.1 + 1e-6 ? between(i, j) : null
      if (fall !== null) own.push(fall)
    }
    const best = own.toSorted((a, b) => b.errors - a.errors || a.j - b.j)[0]
    if (best !== undefined) all.push(best)
  }
  const kept: Fall[] = []
  for (const fall of all) {
    const last = kept.at(-1)
    if (last === undefined || fall.i > last.j + 1) kept.push(fall)
    else if (fall.errors > last.errors) kept[kept.length - 1] = fall
  }
  return kept.flatMap((seen) => {
    const placed = bestStep(curve, seen, seen.drop, noise, 0.1 + 1e-6)
    const fall = between(placed.i, placed.j)
    if (fall === null || stepOverBend(curve, fall, noise) < 16) return []
    const upper = upperLines[fall.i]!
    const back = [...timeS.keys()].find(
      (k) =>
        k >= fall.j && k + 3 <= count && (force[k]! + force[k + 1]! + force[k + 2]!) / 3 >= upper.level - fall.drop / 2,
    )
    if (back === undefined || timeS[back + 1]! - timeS[fall.i]! < 0.035) return []
    return [{ startS: timeS[fall.i]!, downS: timeS[fall.j]!, recoveredS: timeS[back + 1]! }]
  })
}

describe('partial drops of random loads', () => {
  it.each([
    [10, 150],
    [40, 80],
    [74.6, 80],
    [80, 80],
    [320, 40],
  ])('at %i Hz are what looking from every place to every other gives, in %i loads', (rateHz, trials) => {
    const random = createRandom(rateHz)
    let found = 0
    for (let trial = 0; trial < trials; trial++) {
      const lengthS = rateHz > 300 ? 0.8 : rateHz > 50 ? 1.5 : rateHz > 20 ? 3 : 8
      const drops = Array.from({ length: 3 }, () => ({
        atS: random.unit() < 0.3 ? random.between(0, 0.1) : random.between(0.05, lengthS),
        dropN: random.between(5, 110),
        overS: [0.001, 0.02, 0.08, 0.101][Math.floor(random.between(0, 4))]!,
      }))
      const noise = [0.5, 6, 14][trial % 3]!
      const paceNPerS = random.between(50, 700)
      const baseN = [150, 700][trial % 2]!
      const load = (t: number) =>
        baseN +
        paceNPerS * t -
        drops.reduce((sum, { atS, dropN, overS }) => sum + dropN * Math.min(1, Math.max(0, (t - atS) / overS)), 0)
      const curve = madeCurve((t) => load(t) + noise * random.normal(), {
        intervalS: 1 / rateHz,
        endS: lengthS,
        zero: 100,
        noise: trial % 2 === 0 ? noise : 1,
      })
      const seen = findPartialDrops(curve, noise).map(({ startS, downS, recoveredS }) => ({
        startS,
        downS,
        recoveredS,
      }))
      expect(seen).toEqual(plainly(curve, noise))
      found += seen.length
    }
    expect(found).toBeGreaterThan(trials / 15)
  })

  it('reach from the last sample of one mean to the first of another', () => {
    // Means of five samples, 10 ms apart: each ends 20 ms after its time and begins as much before. 300 N/s on either side.
    const timeS = Float64Array.from({ length: 60 }, (_, k) => 0.05 * k)
    const force = timeS.map((t) => 1000 + 300 * t - (t > 1.47 ? 250 : 0))
    const curve: LoadedCurve = {
      ...madeCurve(() => 0, { intervalS: 0.01, endS: 0 }),
      timeS,
      force,
      samplesPerMean: 5,
      peak: 2000,
    }
    const [drop, ...others] = findPartialDrops(curve, 1)
    expect(others).toEqual([])
    expect(drop!.startS).toBeCloseTo(1.47, 9)
    expect(drop!.downS).toBeCloseTo(1.48, 9)
    expect(drop!.from).toBeCloseTo(1000 + 300 * 1.47, 6)
    expect(drop!.drop).toBeCloseTo(250 - 300 * 0.01, 6)
  })
})
