import { describe, expect, it } from 'vitest'
import { type IndicatedRow, stepTable } from '#domain/calibration/steps/stepTable.ts'

const row = (run: number, direction: 'up' | 'down', forceN: number, indicatedN: number): IndicatedRow => ({
  run,
  direction,
  forceN,
  reading: indicatedN * 10,
  indicatedN,
})
const line = { coefficients: [0, 0.1], degreesOfFreedom: 5 }

describe('table of steps', () => {
  const rows = [
    row(1, 'up', 0, 0),
    row(1, 'up', 100, 100.4),
    row(1, 'up', 200, 200),
    row(1, 'down', 100, 101.3),
    row(1, 'down', 0, 0.1),
    row(2, 'up', 100, 100.7),
    row(2, 'up', 200, 201),
    row(3, 'up', 200, 199),
    row(3, 'up', 100, 100.1),
  ]

  it('has one line for each load above zero, lowest first, with the errors worked by hand', () => {
    // The worked row of ISO 7500-1 definitions (from memory) at a hundredth of its size; f0 = 0.1 of 200 N.
    const [low, high] = stepTable(rows, line, 0.5)
    expect(low!.forceN).toBe(100)
    expect(low!.q).toBeCloseTo(0.4, 10)
    expect(low!.b).toBeCloseTo(0.6, 10)
    expect(low!.v).toBeCloseTo(0.9, 10)
    expect(low!.f0).toBeCloseTo(0.05, 10)
    expect(low!.a).toBeCloseTo(0.05, 10)
    expect(low!.class).toBe('1')
    expect(high!.v).toBeNull()
    expect(high!.q).toBeCloseTo(0, 10)
    expect(high!.b).toBeCloseTo(1, 10)
    expect(high!.a).toBeCloseTo(0.025, 10)
  })

  it('judges repeats of one load each by its own force', () => {
    // By hand: errors of +0.3, +0.1 and -0.2 % of about 100 N; their spread is b, their mean q. 0.05 and 0.08 N lie between.
    const near = [row(1, 'up', 100, 100.3), row(2, 'up', 100.05, 100.15), row(3, 'up', 100.08, 99.88)]
    const [only, ...none] = stepTable(near, line, null)
    expect(none).toEqual([])
    expect(only!.forceN).toBeCloseTo(100.0433, 3)
    expect(only!.q).toBeCloseTo(0.0667, 3)
    expect(only!.b).toBeCloseTo(0.5, 3)
  })

  it('knows no accuracy from a curve that was drawn through its points', () => {
    const [low] = stepTable(rows, { ...line, degreesOfFreedom: 0 }, null)
    expect(low!.q).toBeNull()
    expect(low!.a).toBeNull()
    expect(low!.class).toBe('none')
  })
})

describe('a step of a bent curve', () => {
  it('has the resolution by the slope at the mean of its readings', () => {
    // F = r²/1000 has slope r/500: at the mean of 500 and 600 it is 1.1, and one unit is 1.1 N of 0.5 N, 220 %.
    const bent = { coefficients: [0, 0, 1e-3], degreesOfFreedom: 5 }
    const rows = [
      { ...row(1, 'up', 0.5, 0.5), reading: 500 },
      { ...row(2, 'up', 0.5, 0.5), reading: 600 },
    ]
    expect(stepTable(rows, bent, 1)[0]!.a).toBeCloseTo(220, 9)
  })

  it('stands with the others in the order of the loads, however they were read', () => {
    const rows = [300, 100, 200].map((forceN, index) => row(index, 'up', forceN, forceN))
    expect(stepTable(rows, line, null).map(({ forceN }) => forceN)).toEqual([100, 200, 300])
  })
})
