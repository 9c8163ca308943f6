import { describe, expect, it } from 'vitest'
import { creepFromS, creepOf, creepShareOf, zeroReturns } from '#domain/calibration/steps/creep.ts'

/** 0.01 N a count, 100 counts without load. */
const toForceN = (reading: number) => (reading - 100) / 100
const held = { run: 3, loadN: 1000, fromS: 30, toS: 300, fromReading: 100_100, toReading: 100_250 }

describe('creep', () => {
  it('is the change under a load that stays, percent of it', () => {
    // ISO 376 definition (from memory), by hand: 1000.0 N at 30 s, 1001.5 N at 300 s.
    expect(creepOf(held, toForceN)).toEqual({ kind: 'creep', ...held, percent: expect.closeTo(0.15, 10) })
    expect(() => creepOf({ ...held, loadN: 0 }, toForceN)).toThrow(RangeError)
  })

  it('is read from 30 s on', () => {
    // ISO 376, 30 s to 300 s after loading, from memory. Looked for in public copies of ISO 376:1987 and 2011 and of EURAMET cg-4
    // v2.0, and not found: only their first pages are public.
    expect(creepFromS).toBe(30)
  })

  it('is a half-width by its size, and unknown where no load was held', () => {
    const falling = creepOf({ ...held, toReading: 100_000 }, toForceN)
    expect(creepShareOf([creepOf({ ...held, toReading: 100_110 }, toForceN), falling])).toBeCloseTo(0.001, 12)
    expect(
      creepShareOf(zeroReturns([row(1, 'up', 0, 100), row(1, 'up', 9, 1), row(1, 'down', 0, 9)], toForceN)),
    ).toBeNull()
  })
})

const row = (run: number, direction: 'up' | 'down', forceN: number, reading: number) => ({
  run,
  direction,
  forceN,
  reading,
})

describe('return to zero', () => {
  it('is what is left after each run, percent of its highest force', () => {
    const rows = [
      row(1, 'up', 0, 100),
      row(1, 'up', 500, 50_100),
      row(1, 'down', 0, 130),
      row(2, 'up', 0, 120),
      row(2, 'up', 600, 60_120),
      row(2, 'down', 0, 90),
    ]
    // By hand: 30 counts are 0.3 N of 500 N; -30 counts -0.3 N of 600 N.
    expect(zeroReturns(rows, toForceN)).toEqual([
      { kind: 'zero-return', run: 1, loadN: 500, fromReading: 100, toReading: 130, percent: expect.closeTo(0.06, 10) },
      { kind: 'zero-return', run: 2, loadN: 600, fromReading: 120, toReading: 90, percent: expect.closeTo(-0.05, 10) },
    ])
  })

  it('leaves out a run that was not read at zero on both sides', () => {
    expect(zeroReturns([row(1, 'up', 0, 100), row(1, 'up', 500, 50_100)], toForceN)).toEqual([])
    expect(zeroReturns([row(1, 'up', 0, 100), row(1, 'down', 0, 101)], toForceN)).toEqual([])
  })
})

describe('small and odd runs', () => {
  it('have their creep and their return to zero too', () => {
    expect(creepOf({ ...held, loadN: 0.5, fromReading: 150, toReading: 151 }, toForceN)).toMatchObject({
      percent: expect.closeTo(2, 10),
    })
    expect(zeroReturns([row(1, 'up', 0, 100), row(1, 'up', 0.5, 150), row(1, 'down', 0, 101)], toForceN)).toMatchObject(
      [{ percent: expect.closeTo(2, 10) }],
    )
  })

  it('have no return to zero where only a load was read before', () => {
    expect(zeroReturns([row(1, 'up', 500, 50_100), row(1, 'down', 0, 101)], toForceN)).toEqual([])
  })
})
