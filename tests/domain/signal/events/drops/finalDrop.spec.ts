import { describe, expect, it } from 'vitest'
import { readFinalDrop } from '#domain/signal/events/drops/finalDrop.ts'
import type { LoadedCurve } from '#domain/signal/events/loadedCurve.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
import { lines, madeCurve } from '#tests/fakes/madeCurve.ts'

/** 400 N/s to 4000 N at 10 s, then what happens. */
const broken = (
  after: readonly (readonly [number, number])[],
  intervalS: number,
  breakS: number,
  fallS: number | null,
) => madeCurve(lines([0, 0], [10, 4000], ...after), { intervalS, endS: 12, breakS, afterBreak: 200, fallS })

const atOnce = [
  [10.004, 200],
  [12, 200],
] as const
/** Three steps, each within 4 ms, a tenth of a second apart; then the last fracture. */
const inSteps = [
  [10.004, 3600],
  [10.1, 3600],
  [10.104, 3200],
  [10.2, 3200],
  [10.204, 2800],
  [10.3, 2800],
  [10.304, 200],
  [12, 200],
] as const

describe('final drop', () => {
  it('is brittle when the load is down within some milliseconds', () => {
    const drop = readFinalDrop(broken(atOnce, 0.001, 10, 0.0034))!
    expect(drop).toMatchObject({ kind: 'final-drop', manner: 'brittle', startTimeS: 10, dropN: 3800, fromN: 4000 })
    expect(drop.endTimeS).toBeCloseTo(10.0034, 12)
    expect(drop.dropPercent).toBeCloseTo(95, 12)
    expect(drop.percentOfPeak).toBe(100)
  })

  it('is progressive when it goes in steps, and begins with the first of them', () => {
    const drop = readFinalDrop(broken(inSteps, 0.001, 10.3, 0.003))!
    expect(drop.manner).toBe('progressive')
    expect(drop.startTimeS).toBeGreaterThanOrEqual(10)
    expect(drop.startTimeS).toBeLessThan(10.003)
    expect(drop.dropN).toBe(3800)
  })

  it('is progressive when it is slow', () => {
    const slow = [
      [10.3, 200],
      [12, 200],
    ] as const
    expect(readFinalDrop(broken(slow, 0.0125, 10, 0.25))!.manner).toBe('progressive')
  })

  it('begins with the last step when the load has recovered from the one before', () => {
    const recovered = [
      [10.004, 3200],
      [12, 4100],
      [12.004, 200],
      [14, 200],
    ] as const
    const curve = madeCurve(lines([0, 0], [10, 4000], ...recovered), {
      intervalS: 0.001,
      endS: 13,
      breakS: 12,
      afterBreak: 200,
      fallS: 0.003,
    })
    expect(readFinalDrop(curve)).toMatchObject({ manner: 'brittle', startTimeS: 12, fromN: 4100 })
  })

  it('cannot be told where samples are too far apart, unless it took several of them', () => {
    expect(readFinalDrop(broken(atOnce, 0.1, 10, 0.1))!.manner).toBeNull()
    expect(readFinalDrop(broken(inSteps, 0.1, 10.3, 0.1))!.manner).toBe('progressive')
  })

  it('cannot be told where samples are missing in it', () => {
    const curve = broken(atOnce, 0.001, 10, 0.25)
    const kept = [...curve.timeS.keys()].filter((i) => curve.timeS[i]! <= 10 || curve.timeS[i]! >= 10.25)
    const pick = (values: Float64Array) => Float64Array.from(kept, (i) => values[i]!)
    expect(readFinalDrop({ ...curve, timeS: pick(curve.timeS), force: pick(curve.force) })!.manner).toBeNull()
  })

  it('cannot be told where more than 20 ms lie between the last sample of a mean and the first of the next', () => {
    // Five samples, 4 ms apart, to a mean: 16 ms of the step lie within means.
    const withStep = (stepS: number) => ({
      ...broken(atOnce, 0.004, 10, 0.03),
      samplesPerMean: 5,
      timeS: Float64Array.of(9.952, 9.972, 9.992, 9.992 + stepS, 10.012 + stepS),
      force: Float64Array.of(3981, 3989, 3997, 200, 200),
    })
    expect(readFinalDrop(withStep(0.034))!.manner).toBe('brittle')
    expect(readFinalDrop(withStep(0.038))!.manner).toBeNull()
  })

  it('takes the time of the fall from the means when the samples did not tell it', () => {
    const drop = readFinalDrop(broken(atOnce, 0.001, 10, null))!
    expect(drop.endTimeS).toBeCloseTo(10.004, 9)
  })

  it('is brittle within 40 ms, and told from samples no more than 20 ms apart or over more than 2.5 intervals', () => {
    const manner = (intervalS: number, fallS: number) => readFinalDrop(broken(atOnce, intervalS, 10, fallS))!.manner
    expect(manner(0.001, 0.038)).toBe('brittle')
    expect(manner(0.001, 0.042)).toBe('progressive')
    expect(manner(0.019, 0.038)).toBe('brittle')
    expect(manner(0.021, 0.038)).toBeNull()
    expect(manner(0.03, 0.07)).toBeNull()
    expect(manner(0.03, 0.08)).toBe('progressive')
  })

  it('comes down from the highest load since the last dip of more than 4.5 %', () => {
    // 4.5 % of the 3990 N that it came up to again are 179.55 N.
    const dipped = (toN: number) =>
      madeCurve(lines([0, 0], [10, 4000], [10.5, toN], [12, 3990], [12.004, 200]), {
        intervalS: 0.001,
        endS: 13,
        breakS: 12,
        afterBreak: 200,
      })
    expect(readFinalDrop(dipped(3830))!.fromN).toBeCloseTo(4000, 6)
    expect(readFinalDrop(dipped(3790))!.fromN).toBeCloseTo(3990, 6)
    // The noise of the means, 6 x 40 N, explains the deeper one as well.
    expect(readFinalDrop({ ...dipped(3790), noise: 40 })!.fromN).toBeCloseTo(4000, 6)
    expect(readFinalDrop({ ...dipped(3790), noise: 34 })!.fromN).toBeCloseTo(4000, 6)
    expect(readFinalDrop({ ...dipped(3790), noise: 32 })!.fromN).toBeCloseTo(3990, 6)
  })

  it('begins 5 % of the fall below the highest, and ends where 10 % of it are left', () => {
    // 400 N/s down to 3600 N at 11 s, where it breaks: 5 % of 3800 N are passed after 0.475 s.
    const sagging = [
      [11, 3600],
      [11.004, 200],
      [12, 200],
    ] as const
    expect(readFinalDrop(broken(sagging, 0.001, 11, 0.003))!.startTimeS).toBeCloseTo(10.475, 2)
    // 3800 N/s: at 580 N after 0.9 s.
    const slow = [
      [11, 200],
      [12, 200],
    ] as const
    expect(readFinalDrop(broken(slow, 0.001, 10, null))!.endTimeS).toBeCloseTo(10.9, 2)
  })

  it('begins at the break, known to a sample, where the last mean before it reaches into the fall', () => {
    const curve = {
      ...broken(atOnce, 0.004, 9.999, 0.003),
      samplesPerMean: 5,
      timeS: Float64Array.of(9.952, 9.972, 9.992, 10.012),
      force: Float64Array.of(3981, 3989, 2800, 200),
    }
    expect(readFinalDrop(curve)).toMatchObject({ startTimeS: 9.999, fromN: 3989, manner: 'brittle' })
  })

  it('is the same from any level at rest', () => {
    const made = broken(atOnce, 0.001, 10, 0.003)
    const moved = {
      ...made,
      force: made.force.map((f) => f + 500),
      zero: 500,
      peak: made.peak + 500,
      afterBreak: 700,
    }
    const drop = readFinalDrop(moved)!
    expect(drop.dropN).toBe(3800)
    expect(drop.dropPercent).toBeCloseTo(95, 12)
    expect(drop.percentOfPeak).toBeCloseTo(100, 12)
  })

  it('is none in an unloading', () => {
    expect(readFinalDrop(madeCurve(lines([0, 0], [10, 4000], [20, 0]), { intervalS: 0.1, endS: 20 }))).toBeNull()
  })
})

/** Samples of equal distance from 10 s on, with the break at one of them. */
function sampled(values: readonly number[], breakAt: number, given: Partial<LoadedCurve> = {}): LoadedCurve {
  const intervalS = given.intervalS ?? 0.001
  return {
    ...madeCurve(() => 0, { intervalS, endS: 0 }),
    timeS: Float64Array.from(values, (_, k) => 10 + k * intervalS),
    force: Float64Array.from(values),
    peak: Math.max(...values),
    breakS: 10 + breakAt * intervalS,
    afterBreak: 200,
    fallS: 0.003,
    ...given,
  }
}

describe('the limits of a final drop', () => {
  it('are a dip of 4.5 % of what it came up to, from any level at rest', () => {
    for (const zero of [0, 500]) {
      const comesFrom = (dipN: number) =>
        readFinalDrop(
          madeCurve(
            lines([0, zero], [10, 4000 + zero], [10.5, 4000 + zero - dipN], [12, 3990 + zero], [12.004, 200 + zero]),
            {
              intervalS: 0.001,
              endS: 13,
              breakS: 12,
              afterBreak: 200 + zero,
              zero,
            },
          ),
        )!.fromN! - zero
      // 10 N more than the dip from 3990 N.
      expect(limitOf((dipN) => comesFrom(dipN) > 3995, 100, 300)).toBeCloseTo(10 + 0.045 * 3990, 0)
    }
  })

  it('are the first and the only mean before the break', () => {
    expect(readFinalDrop(sampled([4000, 200, 200], 0))).toMatchObject({ fromN: 4000, startTimeS: 10 })
    expect(readFinalDrop(sampled([4000, 3990, 3980, 200], 2))!.fromN).toBe(4000)
    expect(readFinalDrop(sampled([4000, 200], -1))).toBeNull()
  })

  it('are a load that comes down, from above the level at rest', () => {
    expect(readFinalDrop(sampled([4000, 4000], 1, { afterBreak: 4000 }))).toBeNull()
    expect(readFinalDrop(sampled([4000, 4000], 1, { afterBreak: 3999.5 }))!.dropN).toBe(0.5)
    expect(readFinalDrop(sampled([4000, 4000], 1, { afterBreak: 4000.5 }))).toBeNull()
    expect(readFinalDrop(sampled([4000, 4000], 1, { afterBreak: null }))).toBeNull()
    expect(readFinalDrop(sampled([300, 300], 1, { zero: 300 }))).toBeNull()
    expect(readFinalDrop(sampled([-100, -100], 1, { afterBreak: -900 }))).toBeNull()
  })

  it('begin at the break where it was near its highest one mean before, at a mean where that was earlier', () => {
    // 5 % of the fall of 3800 N: below 3810 N.
    expect(readFinalDrop(sampled([3990, 4000, 3900, 3600, 200], 3))!.startTimeS).toBe(10.003)
    expect(readFinalDrop(sampled([3990, 4000, 3700, 3600, 200], 3))!.startTimeS).toBe(10.001)
  })

  it('end where a tenth is left, or at the break where the means do not tell', () => {
    const slow = sampled([4000, 3000, 2000, 580, 200], 0, { fallS: null, intervalS: 0.125 })
    expect(readFinalDrop(slow)!.endTimeS).toBe(10.375)
    const cut = sampled([4000, 3000, 2000], 0, { fallS: null, intervalS: 0.125 })
    expect(readFinalDrop(cut)!.endTimeS).toBe(10)
  })

  it('count the widest step until they end, and no other', () => {
    const timed = (timeS: readonly number[], fallS: number, intervalS = 0.001) =>
      readFinalDrop({
        ...sampled(
          timeS.map((_, k) => (k < 1 ? 4000 : 200)),
          0,
          { intervalS, fallS },
        ),
        timeS: Float64Array.from(timeS),
      })!.manner
    // The fall goes on beyond the last sample.
    expect(timed([10, 10.03], 0.05, 0.03)).toBeNull()
    // Missing at its very end, and only after it.
    expect(timed([10, 10.001, 10.25], 0.25)).toBeNull()
    expect(timed([10, 10.125, 10.25, 10.375, 10.5, 20], 0.5)).toBe('progressive')
  })
})
