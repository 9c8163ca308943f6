import { describe, expect, it } from 'vitest'
import { Trouble } from '#contract/errors.ts'
import { creepOf, zeroReturnOf } from '#domain/calibration/creep.ts'

describe('creep', () => {
  const held = [
    { timeS: 0, forceN: 990 },
    { timeS: 20, forceN: 999 },
    { timeS: 40, forceN: 1001 },
    { timeS: 200, forceN: 1001.4 },
    { timeS: 300, forceN: 1001.5 },
  ]

  it('is the change from 30 s to 300 s under the load, percent of it', () => {
    // ISO 376 definition (from memory), by hand: 1000.0 N at 30 s between 999 and 1001; (1001.5 - 1000) / 1000.
    expect(creepOf(held, 1000)).toEqual({ kind: 'creep', percent: expect.closeTo(0.15, 10), fromS: 30, toS: 300 })
  })

  it('is zero return after unloading, percent of the load taken off', () => {
    const free = [
      { timeS: 10, forceN: 3 },
      { timeS: 30, forceN: 2 },
      { timeS: 400, forceN: 1.26 },
    ]
    // By hand: at 300 s 2 - 0.74 · 270/370 = 1.46; (1.46 - 2) / 1000.
    expect(zeroReturnOf(free, 1000).percent).toBeCloseTo(-0.054, 10)
    expect(zeroReturnOf(free, 1000).kind).toBe('zero-return')
  })

  it('needs a record from before 30 s until 300 s', () => {
    expect(() => creepOf(held.slice(0, 4), 1000)).toThrow(/until 300 s/)
    expect(() => creepOf(held.slice(2), 1000)).toThrow(Trouble)
    expect(() => creepOf([], 1000)).toThrow(Trouble)
    expect(() => creepOf(held, 0)).toThrow(RangeError)
  })
})
