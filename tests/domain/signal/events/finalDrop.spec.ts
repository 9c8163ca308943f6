import { describe, expect, it } from 'vitest'
import { readFinalDrop } from '#domain/signal/events/finalDrop.ts'
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

  it('takes the time of the fall from the means when the samples did not tell it', () => {
    const drop = readFinalDrop(broken(atOnce, 0.001, 10, null))!
    expect(drop.endTimeS).toBeCloseTo(10.004, 9)
  })

  it('is none in an unloading', () => {
    expect(readFinalDrop(madeCurve(lines([0, 0], [10, 4000], [20, 0]), { intervalS: 0.1, endS: 20 }))).toBeNull()
  })
})
