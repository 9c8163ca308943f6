import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createDeviceTime, type DeviceTimeUnit } from '#domain/signal/stream/time/deviceTime.ts'

const none = Number.NaN

/** Steps of counters that arrive together, so that arrival says nothing unless it is given. */
function steps(unit: DeviceTimeUnit, counters: readonly number[], sinceArrivalS = 0, numbered = false) {
  const device = createDeviceTime(unit)
  return counters.map((us) => device.step(us, sinceArrivalS, false, numbered))
}

describe('a counter of microseconds', () => {
  it('gives steps, also across its 32 bits', () => {
    expect(steps('us', [7, 1007, 1507])).toEqual([0, 0.001, 0.0005])
    expect(steps('us', [2 ** 32 - 100, 50])).toEqual([0, 0.00015])
    expect(steps('ms', [(2 ** 32 - 1) * 1000, 3000])[1]).toBeCloseTo(0.004, 9)
  })

  it('leaves out what comes twice, unless its number is new', () => {
    expect(steps('us', [7, 7, 1007])).toEqual([0, none, 0.001])
    expect(steps('us', [7, 7, 1007], 0, true)).toEqual([0, 0, 0.001])
    expect(steps('s', [7, 7, 1007])).toEqual([0, none, 0.001])
  })

  it('leaves out one from the past, and restarts with the second that follows it, by arrival', () => {
    expect(steps('us', [20e6, 19e6, 19_000_001, 19_000_002], 0.25)).toEqual([0, none, 0.25, 1e-6])
    expect(steps('us', [20e6, 19e6, 18e6, 17e6, 20_000_010])).toEqual([0, none, none, none, 1e-5])
    expect(steps('us', [20e6, 19e6, 20_000_010, 19_000_001, 20_000_030])).toEqual([0, none, 1e-5, none, 2e-5])
    expect(steps('us', [20e6, 13e6, 18e6])).toEqual([0, 0, 5])
    const device = createDeviceTime('s')
    expect([15e6, 14e6].map((us) => device.step(us, 0, false, false))).toEqual([0, none])
  })

  it('follows one from the past within five seconds', () => {
    // Five seconds behind arrival does not contradict it yet.
    expect(steps('us', [200e6, 195e6, 199_999_999])).toEqual([0, none, 0])
    expect(steps('us', [200e6, 195e6, 195e6])).toEqual([0, none, none])
  })

  it('begins anew below ten seconds, a second and more behind, so that no reading is lost', () => {
    const begins = (lastUs: number, us: number, sinceS = 0.25) => {
      const device = createDeviceTime('us')
      device.step(lastUs, 0, false, false)
      return [device.beginsAnew(us, sinceS), device.step(us, sinceS, false, false), device.wentBack()]
    }
    expect(begins(900e6, 9_999_999)).toEqual([true, 0.25, true])
    expect(begins(13e6, 10_000_000)).toEqual([false, none, true])
    expect(begins(2e6, 999_999)).toEqual([true, 0.25, true])
    expect(begins(2e6, 1_000_000)).toEqual([false, none, true])
    // More than half a counter behind looks like far ahead; the end of the counter is no restart.
    expect(begins(2_400e6, 1000)).toEqual([true, 0.25, true])
    expect(begins(2 ** 32 - 1000, 2e6, 2.001)).toEqual([false, 2.001, false])
    expect(begins(900e6, 920e6)).toEqual([false, 0.25, false])
    expect(createDeviceTime('us').beginsAnew(5, 0)).toBe(false)
  })

  it('tells that it went back by its last step alone', () => {
    const device = createDeviceTime('us')
    expect(device.wentBack()).toBe(false)
    device.step(900e6, 0, false, false)
    device.step(1000, 0.25, false, false)
    expect(device.wentBack()).toBe(true)
    device.step(2000, 0.25, false, false)
    expect(device.wentBack()).toBe(false)
    device.step(1000, 0.25, true, false)
    expect(device.wentBack()).toBe(true)
  })

  it('restarts where arrival differs from it by more than five seconds, or when it is told', () => {
    expect(steps('us', [0, 5_000_000])).toEqual([0, 5])
    expect(steps('us', [0, 5_000_001])).toEqual([0, 0])
    expect(steps('us', [0, 1_000_000], 6)).toEqual([0, 1])
    expect(steps('us', [0, 1_000_000], 6.5)).toEqual([0, 6.5])
    const device = createDeviceTime('us')
    device.step(900, 0, false, false)
    expect(device.step(100, 0.75, true, false)).toBe(0.75)
    expect(device.step(300, 0, false, false)).toBe(0.0002)
  })

  it('forgets the one from the past with a restart', () => {
    const device = createDeviceTime('us')
    device.step(20e6, 0, false, false)
    device.step(19e6, 0, false, false)
    device.step(21e6, 0.5, true, false)
    expect(device.step(19_000_001, 0, false, false)).toBeNaN()
  })
})

describe('a counter of milliseconds', () => {
  it('advances by the mean of its steps, and keeps within the millisecond that it names', () => {
    const random = createRandom(33)
    const device = createDeviceTime('ms')
    let counterMs = 0
    let [count, mean, ahead] = [0, 0, 0]
    device.step(0, 0, false, true)
    for (let i = 0; i < 3000; i++) {
      const stepMs =
        i % 700 === 699 ? 40 : i % 300 < 150 ? Math.floor(3 * random.unit()) : Math.floor(1.6 * random.unit())
      counterMs += stepMs
      const stepUs = 1000 * stepMs
      count += 1
      // Running mean of 256 steps, the first ones by their number; a long step after the sixteenth does not count.
      if (!(count > 16 && stepUs > 4 * mean + 2000)) mean += (stepUs - mean) / Math.min(256, count)
      const kept = Math.max(0, Math.min(999, ahead + mean - stepUs))
      const expected = Math.max(1, stepUs + kept - ahead)
      ahead = kept
      expect(device.step(1000 * counterMs, 0, false, true) * 1e6).toBeCloseTo(expected, 6)
    }
  })

  it('restarts by its mean step where arrival tells of none, and no further ahead', () => {
    const device = createDeviceTime('ms')
    for (let i = 0; i <= 20; i++) device.step(4000 * i, 0.004, false, true)
    expect(device.step(900_000, 0.001, true, true)).toBeCloseTo(0.004, 9)
    expect(device.step(904_000, 0.004, false, true)).toBeCloseTo(0.004, 9)
  })

  it('may give a long step within the first sixteen to the mean', () => {
    const device = createDeviceTime('ms')
    device.step(0, 0, false, true)
    for (let i = 1; i <= 15; i++) device.step(1000 * i, 0, false, true)
    device.step(15_000 + 31_000, 0, false, true)
    // Mean of fifteen steps of 1 ms and one of 31 ms: 2.875 ms. The next reading, of 1 ms, is 0.999 ms ahead at most.
    expect(device.step(47_000, 0, false, true)).toBeCloseTo(0.001 + 0.000999, 9)
  })
})

describe('the width of a counter', () => {
  it('is 32 bits of its unit, half of which lies ahead', () => {
    // Arrival tells of a second less, so that a restart would be seen.
    expect(createAfter('us', 200e6, 199)).toBe(200)
    expect(createAfter('us', 1_800e6, 1799)).toBe(1800)
    expect(createAfter('ms', 200_000e6, 199_999)).toBe(200_000)
    expect(steps('us', [100, 99])).toEqual([0, none])
  })
})

describe('a long step of a millisecond counter', () => {
  /** The step after a long one of so many ms, itself of 1 ms, behind so many steps of 1 ms. */
  const next = (before: number, longMs: number) => {
    const device = createDeviceTime('ms')
    device.step(0, 0, false, true)
    for (let i = 1; i <= before; i++) device.step(1000 * i, 0, false, true)
    device.step(1000 * (before + longMs), 0, false, true)
    return device.step(1000 * (before + longMs + 1), 0, false, true) * 1e6
  }

  it('does not count for the mean beyond four of it and two milliseconds, after sixteen', () => {
    // Where it counts, the mean is (n + long) / (n + 1) ms, and the next reading lies as much ahead.
    expect(next(20, 7)).toBeCloseTo(1000, 6)
    expect(next(20, 6)).toBeGreaterThan(1100)
    expect(next(16, 7)).toBeCloseTo(1000, 6)
    expect(next(15, 7)).toBeGreaterThan(1100)
  })
})

function createAfter(unit: DeviceTimeUnit, us: number, sinceArrivalS: number): number {
  const device = createDeviceTime(unit)
  device.step(0, 0, false, false)
  return device.step(us, sinceArrivalS, false, false)
}
