import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import type { DeviceTimeUnit } from '#domain/signal/stream/time/deviceTime.ts'
import { createSampleClock } from '#domain/signal/stream/time/sampleClock.ts'

type Reading = { us?: number; seq?: number; arrivalS?: number }

/** Stamps readings one by one, each arriving at its device time unless told otherwise. */
function stampAll(readings: readonly Reading[], unit: DeviceTimeUnit = 'us') {
  const gaps: { timeS: number; missing: number }[] = []
  const restarts: number[] = []
  const clock = createSampleClock(
    unit,
    (timeS, missing) => gaps.push({ timeS, missing }),
    (timeS) => restarts.push(timeS),
  )
  const out = new Float64Array(1)
  const timeS = readings.map(({ us = Number.NaN, seq = Number.NaN, arrivalS }, i) => {
    clock.stamp(Float64Array.of(us), Float64Array.of(seq), 1, arrivalS ?? i * 0.01, out)
    return out[0]!
  })
  return { timeS, gaps, restarts, state: clock.state() }
}

const expectRising = (times: readonly number[]) => {
  const kept = times.filter((t) => !Number.isNaN(t))
  expect(kept.findIndex((t, i) => i > 0 && !(t > kept[i - 1]!))).toBe(-1)
  expect(kept.findIndex((t) => Math.abs(t * 1e6 - Math.round(t * 1e6)) > 1e-3)).toBe(-1)
}

describe('a device that counts microseconds', () => {
  it('is followed through the wrap at 2^32', () => {
    const start = 2 ** 32 - 50_000
    const { timeS, gaps } = stampAll(
      Array.from({ length: 20 }, (_, i) => ({ us: (start + i * 10_000) % 2 ** 32, seq: i })),
    )
    timeS.forEach((t, i) => {
      expect(t).toBeCloseTo(i * 0.01, 9)
    })
    expect(gaps).toEqual([])
  })

  it('tells what sequence numbers say is missing, across their wrap too', () => {
    const sent = Array.from({ length: 40 }, (_, i) => ({
      us: i * 10_000,
      seq: (2 ** 32 - 20 + i) % 2 ** 32,
      arrivalS: i * 0.01,
    }))
    const { timeS, gaps, state } = stampAll(sent.filter((_, i) => i < 18 || i > 22))
    expect(gaps).toEqual([{ timeS: 0.23, missing: 5 }])
    expect(state.missingSamples).toBe(5)
    expectRising(timeS)
  })

  it('tells what is missing by time alone', () => {
    const sent = Array.from({ length: 60 }, (_, i) => ({ us: i * 10_000, arrivalS: i * 0.01 }))
    expect(stampAll(sent.filter((_, i) => i !== 40 && i !== 41)).gaps).toEqual([{ timeS: 0.42, missing: 2 }])
  })

  it('leaves out what comes twice or too late', () => {
    const { timeS, state } = stampAll([
      { us: 0, seq: 0 },
      { us: 10_000, seq: 1 },
      { us: 10_000, seq: 1 },
      { us: 30_000, seq: 3 },
      { us: 20_000, seq: 2 },
      { us: 40_000, seq: 4 },
    ])
    expect(timeS).toEqual([0, 0.01, Number.NaN, 0.03, Number.NaN, 0.04])
    expect(state.leftOut).toBe(2)
  })

  it('goes on by arrival when the device restarts, with every reading and nothing missing, and says so', () => {
    const before = Array.from({ length: 30 }, (_, i) => ({ us: 900e6 + i * 10_000, seq: 5000 + i, arrivalS: i * 0.01 }))
    const after = Array.from({ length: 30 }, (_, i) => ({ us: 1000 + i * 10_000, seq: i, arrivalS: 1.29 + i * 0.01 }))
    const { timeS, gaps, restarts, state } = stampAll([...before, ...after])
    expectRising(timeS)
    expect(timeS.every((time) => !Number.isNaN(time))).toBe(true)
    expect(timeS[30]).toBeCloseTo(1.29, 6)
    expect(timeS.at(-1)).toBeCloseTo(1.29 + 0.29, 6)
    expect([restarts, gaps, state.restarts, state.leftOut]).toEqual([[1.29], [], 1, 0])
  })

  it('does so without numbers, and where the first lines are lost', () => {
    for (const seq of [undefined, 5000]) {
      const numbered = (i: number) => (seq === undefined ? {} : { seq: seq + i })
      const before = Array.from({ length: 30 }, (_, i) => ({ us: 9e8 + i * 1e4, ...numbered(i), arrivalS: i * 0.01 }))
      const after = Array.from({ length: 30 }, (_, i) => ({
        ...{ us: 3e6 + i * 1e4, arrivalS: 120 + i * 0.01 },
        ...(seq === undefined ? {} : { seq: 200 + i }),
      }))
      const { gaps, restarts, state } = stampAll([...before, ...after])
      expect([restarts, gaps, state.leftOut, state.missingSamples]).toEqual([[120], [], 0, 0])
    }
  })

  it('reports its rate, and jitter as what the steps differ from the usual one', () => {
    const random = createRandom(4)
    const { state } = stampAll(
      Array.from({ length: 4000 }, (_, i) => ({
        us: Math.round(i * 12_500 + 50 * random.normal()),
        arrivalS: i * 0.0125,
      })),
    )
    expect(state.sampleRateHz).toBeCloseTo(80, 0)
    // Steps of times with independent errors of 50 µs have SD 50 sqrt 2 = 70.7 µs; a running mean of 256 steps: +-20 %.
    expect(state.jitterS! * 1e6).toBeGreaterThan(50)
    expect(state.jitterS! * 1e6).toBeLessThan(95)
  })

  it('does not care how the readings are cut into chunks', () => {
    const random = createRandom(9)
    const count = 2000
    const us = Float64Array.from({ length: count }, (_, i) => Math.round(i * 1000 + 30 * random.normal() + 1000))
    const seq = Float64Array.from({ length: count }, (_, i) => i + (i > 700 ? 3 : 0))
    const whole = new Float64Array(count)
    createSampleClock('us', () => {}).stamp(us, seq, count, 0, whole)
    const pieces = new Float64Array(count)
    const clock = createSampleClock('us', () => {})
    for (let at = 0; at < count; ) {
      const length = Math.min(count - at, random.wholeBetween(1, 90))
      clock.stamp(us, seq, length, 0, pieces, at)
      at += length
    }
    expect(pieces).toEqual(whole)
  })
})

describe('a device that counts milliseconds', () => {
  it('above 1 kHz gives even times that keep within its millisecond', () => {
    const rateHz = 2500
    const sent = Array.from({ length: 10_000 }, (_, i) => ({
      us: Math.floor((i * 1000) / rateHz) * 1000,
      arrivalS: i / rateHz,
    }))
    const { timeS, gaps, state } = stampAll(sent, 'ms')
    expectRising(timeS)
    expect(gaps).toEqual([])
    expect(state.sampleRateHz! / rateHz).toBeCloseTo(1, 1)
    timeS.forEach((t, i) => {
      if (i > 1000) expect(Math.abs(t - i / rateHz)).toBeLessThan(0.0011)
    })
  })
})

describe('a device without time', () => {
  /** Readings of an even device that wait in a buffer: emptied every `burstS`, with stalls, arriving in chunks. */
  function bursts(options: {
    rateHz: number
    lengthS: number
    burstS: number
    stallsS?: readonly number[]
    pauseAtS?: number
  }) {
    const { rateHz, lengthS, burstS, stallsS = [], pauseAtS } = options
    const gaps: { timeS: number; missing: number }[] = []
    const clock = createSampleClock('us', (timeS, missing) => gaps.push({ timeS, missing }))
    const random = createRandom(11)
    const trueS: number[] = []
    const stampedS: number[] = []
    const nothing = new Float64Array(20_000).fill(Number.NaN)
    const out = new Float64Array(20_000)
    let sent = 0
    const sentAt = (i: number) => i / rateHz + (pauseAtS !== undefined && i / rateHz >= pauseAtS ? 5 : 0)
    for (let now = burstS; now < lengthS; now += burstS * random.between(0.7, 1.3)) {
      if (stallsS.some((at) => now > at && now < at + 0.3)) continue
      let count = 0
      while (sentAt(sent) <= now) {
        trueS.push(sentAt(sent))
        sent += 1
        count += 1
      }
      if (count === 0) continue
      clock.stamp(nothing, nothing, count, now + random.between(0, 0.001), out)
      for (let i = 0; i < count; i++) stampedS.push(out[i]!)
    }
    const usable = stampedS.map((t, i) => ({ t, true: trueS[i]! })).filter(({ t }) => !Number.isNaN(t))
    return { usable, gaps, state: clock.state() }
  }

  it.each([
    ['16 ms of a USB bridge', { rateHz: 80, burstS: 0.016 }],
    ['64 readings of a driver', { rateHz: 80, burstS: 0.8 }],
    ['bursts at 10 kHz', { rateHz: 10_000, burstS: 0.016 }],
    ['one reading at a time at 10 Hz', { rateHz: 10, burstS: 0.01 }],
  ])('%s do not bend the curve', (_name, options) => {
    const { usable, gaps, state } = bursts({ ...options, lengthS: 60, stallsS: [20.1, 33.3] })
    expectRising(usable.map(({ t }) => t))
    expect(gaps).toEqual([])
    expect(state.clock).toBe('arrival')
    expect(state.sampleRateHz! / options.rateHz).toBeCloseTo(1, 2)
    // After ten seconds every step is within 1 % of the true one and the whole is straight within one burst.
    const settled = usable.filter(({ true: t }) => t > 15)
    const offset = settled[0]!.t - settled[0]!.true
    const stepsOff = settled.slice(1).map(({ t }, i) => Math.abs((t - settled[i]!.t) * options.rateHz - 1))
    const placesOff = settled.map(({ t, true: sentS }) => Math.abs(t - sentS - offset))
    // Whole microseconds alone move a step of 100 µs by 1 %.
    expect(stepsOff.reduce((a, b) => Math.max(a, b), 0)).toBeLessThan(0.01 + 2e-6 * options.rateHz)
    expect(placesOff.reduce((a, b) => Math.max(a, b), 0)).toBeLessThan(0.02 + 0.1 * options.burstS)
  })

  it('shows a true pause as a gap', () => {
    const { usable, gaps } = bursts({ rateHz: 80, burstS: 0.016, lengthS: 40, pauseAtS: 20 })
    expectRising(usable.map(({ t }) => t))
    expect(gaps.length).toBe(1)
    // 5 s at 80 Hz are 400 samples.
    expect(Math.abs(gaps[0]!.missing - 400)).toBeLessThanOrEqual(3)
  })

  it('with sequence numbers keeps room for what was lost', () => {
    const gaps: number[] = []
    const clock = createSampleClock('us', (_t, missing) => gaps.push(missing))
    const out = new Float64Array(1)
    const stamped: number[] = []
    for (let i = 0; i < 1000; i++) {
      if (i >= 600 && i < 610) continue
      clock.stamp(Float64Array.of(Number.NaN), Float64Array.of(i), 1, i / 80, out)
      stamped.push(out[0]!)
    }
    expect(gaps).toEqual([10])
    expect(stamped[600]! - stamped[599]!).toBeCloseTo(11 / 80, 3)
  })

  it('goes on by arrival after an interruption', () => {
    const clock = createSampleClock('us', () => {})
    const out = new Float64Array(1)
    const nothing = Float64Array.of(Number.NaN)
    let last = 0
    for (let i = 0; i < 400; i++) {
      clock.stamp(nothing, nothing, 1, i / 80, out)
      last = out[0]!
    }
    clock.interrupted()
    clock.stamp(nothing, nothing, 1, 5 + 12, out)
    expect(out[0]! - last).toBeGreaterThan(11.5)
    expect(out[0]! - last).toBeLessThan(12.5)
  })
})

describe('what a stamp tells', () => {
  const none = Number.NaN
  const stampOf = (unit: DeviceTimeUnit = 'us') => {
    const gaps: number[] = []
    const clock = createSampleClock(unit, (_timeS, missing) => gaps.push(missing))
    return {
      clock,
      gaps,
      stamp(us: number[], sequence: number[], arrivalS: number) {
        const timeS = new Float64Array(us.length)
        const untimed = clock.stamp(Float64Array.from(us), Float64Array.from(sequence), us.length, arrivalS, timeS)
        return { untimed, timeS: [...timeS] }
      },
    }
  }

  it('is how many readings were given no time', () => {
    const { stamp, clock } = stampOf()
    expect(stamp([], [], 0).untimed).toBe(0)
    expect(stamp([0, 1000, 1000, 2000], [0, 1, 1, 2], 0)).toEqual({ untimed: 1, timeS: [0, 0.001, none, 0.002] })
    expect(stamp([2000, 2000], [2, 2], 0).untimed).toBe(2)
    expect(clock.state()).toMatchObject({ leftOut: 3, clock: 'device' })
    const still = stampOf()
    expect(still.stamp([none, none], [none, none], 1).untimed).toBe(2)
    expect(still.clock.state()).toMatchObject({ leftOut: 0, clock: 'arrival', sampleRateHz: null, jitterS: null })
    for (let i = 1; i < 200; i++) still.stamp([none], [none], 1 + i / 80)
    expect(still.stamp([none, none], [none, none], 1 + 201 / 80).untimed).toBe(0)
  })

  it('is also how many readings without a time came twice or too late', () => {
    const { stamp, clock } = stampOf()
    for (let i = 0; i < 200; i++) stamp([none], [i], i / 80)
    const { untimed, timeS } = stamp([none, none, none, none], [200, 200, 199, 201], 201 / 80)
    expect(untimed).toBe(2)
    expect(timeS.map(Number.isNaN)).toEqual([false, true, true, false])
    expect(timeS[3]! - timeS[0]!).toBeCloseTo(1 / 80, 5)
    expect(clock.state().leftOut).toBe(2)
  })

  it('takes a reading whose numbers have restarted for the next, and tells of the restart', () => {
    const { stamp, clock, gaps } = stampOf()
    for (let i = 0; i < 200; i++) stamp([none], [5000 + i], i / 80)
    const { timeS, untimed } = stamp([none, none, none], [5200, 0, 1], 202 / 80)
    expect(untimed).toBe(0)
    expect(timeS[1]! - timeS[0]!).toBeCloseTo(1 / 80, 5)
    expect(timeS[2]! - timeS[1]!).toBeCloseTo(1 / 80, 5)
    expect([clock.state().restarts, gaps]).toEqual([1, []])
    stamp([none], [2], (202 + 400) / 80)
    expect(clock.state().restarts).toBe(1)
  })

  it('keeps the time that passed while a device without time restarted', () => {
    const { stamp, clock } = stampOf()
    for (let i = 0; i < 200; i++) stamp([none], [5000 + i], i / 80)
    const [lastS] = stamp([none], [5200], 200 / 80).timeS
    const [firstS] = stamp([none], [0], 200 / 80 + 5).timeS
    expect(firstS! - lastS!).toBeCloseTo(5, 1)
    expect(clock.state().restarts).toBe(1)
  })

  it('counts a reading whose numbers have restarted as one more, however often they do', () => {
    const { stamp, clock } = stampOf()
    for (let i = 0; i < 800; i++) stamp([none], [i % 16], i / 80)
    // The first of each sixteen comes from the past for all that is known, and is left out.
    expect(clock.state().sampleRateHz! / 75).toBeCloseTo(1, 3)
    expect(clock.state().restarts).toBeGreaterThan(30)
  })

  it('goes on by arrival after an interruption, whatever the device counts', () => {
    const { stamp, clock, gaps } = stampOf()
    for (let i = 0; i < 100; i++) stamp([1e9 + i * 10_000], [none], i * 0.01)
    clock.interrupted()
    expect(stamp([500], [none], 0.99 + 0.25).timeS[0]).toBeCloseTo(0.99 + 0.25, 6)
    expect(stamp([10_500], [none], 0.99 + 0.26).timeS[0]).toBeCloseTo(0.99 + 0.26, 6)
    expect(gaps).toEqual([24])
  })

  it('counts what an interruption of half a second has cost a device without time', () => {
    const { stamp, clock, gaps } = stampOf()
    for (let i = 0; i < 400; i++) stamp([none], [none], i / 80)
    clock.interrupted()
    stamp([none], [none], 399 / 80 + 0.5)
    expect(gaps).toEqual([39])
  })
})

describe('a device whose numbers are wrong', () => {
  /** Sends 80 readings a second for so long, each arriving alone; what is not given is not sent. */
  function heard(
    lengthS: number,
    numbers: { us?: (i: number) => number; seq?: (i: number) => number },
    unit: DeviceTimeUnit = 'us',
  ) {
    const readings = Array.from({ length: 80 * lengthS }, (_, i) => ({
      ...(numbers.us === undefined ? {} : { us: numbers.us(i) }),
      ...(numbers.seq === undefined ? {} : { seq: numbers.seq(i) }),
      arrivalS: i / 80,
    }))
    const all = stampAll(readings, unit)
    // Three seconds to judge, a second to learn from arrival.
    return { ...all, late: all.timeS.slice(80 * 5) }
  }

  it.each<[string, Parameters<typeof heard>[1], DeviceTimeUnit, string]>([
    ['stands', { us: () => 5e6, seq: (i) => i }, 'us', 'time-stands'],
    ['stands, without a sequence', { us: () => 5e6 }, 'us', 'time-stands'],
    ['falls', { us: (i) => 4e9 - 12_500 * i }, 'us', 'time-falls'],
    ['is in milliseconds', { us: (i) => Math.floor(12.5 * i), seq: (i) => i }, 'us', 'time-slow'],
    ['is in microseconds', { us: (i) => 12_500e3 * i }, 'ms', 'time-fast'],
  ])('goes by arrival where its time %s', (_name, numbers, unit, kind) => {
    const { late, state, gaps, restarts } = heard(10, numbers, unit)
    expect(state.deviceFaults.map((fault) => fault.kind)).toEqual([kind])
    expect(state.clock).toBe('arrival')
    expect(state.sampleRateHz).toBeCloseTo(80, 1)
    expectRising(late)
    for (let i = 1; i < late.length; i++) expect(Math.abs(late[i]! - late[i - 1]! - 1 / 80)).toBeLessThan(1e-3)
    expect([gaps, restarts]).toEqual([[], []])
  })

  it('goes by time where its sequence stands or falls', () => {
    for (const [seq, kind] of [
      [() => 7, 'sequence-stands'],
      [(i: number) => 4e9 - i, 'sequence-falls'],
    ] as const) {
      const { late, state, gaps } = heard(8, { us: (i) => 12_500 * i, seq })
      expect(state.deviceFaults).toEqual([{ kind, pace: null }])
      expect(state.clock).toBe('device')
      expect(late.every((timeS) => !Number.isNaN(timeS))).toBe(true)
      expect(late[1]! - late[0]!).toBeCloseTo(0.0125, 9)
      expect(gaps).toEqual([])
    }
  })

  it('goes by arrival alone where neither means anything', () => {
    const { late, state } = heard(8, { us: () => 0, seq: () => 0 })
    expect(state.deviceFaults.map(({ kind }) => kind)).toEqual(['sequence-stands', 'time-stands'])
    expectRising(late)
    expect(late.every((timeS) => !Number.isNaN(timeS))).toBe(true)
  })

  it('keeps the time that has passed when its clock stops on the way', () => {
    const { timeS, state } = heard(20, { us: (i) => 12_500 * Math.min(i, 800) })
    expect(state.deviceFaults.map(({ kind }) => kind)).toEqual(['time-stands'])
    expect(timeS.at(-1)).toBeGreaterThan(19.8)
    expect(timeS.at(-1)).toBeLessThan(20.2)
  })

  it('is trusted again when it was unplugged and comes back', () => {
    const clock = createSampleClock('us', () => {})
    const out = new Float64Array(1)
    const stamp = (us: number, arrivalS: number) => {
      clock.stamp(Float64Array.of(us), Float64Array.of(Number.NaN), 1, arrivalS, out)
      return out[0]!
    }
    for (let i = 0; i < 400; i++) stamp(5, i / 80)
    expect(clock.state().clock).toBe('arrival')
    const beforeS = stamp(5, 5)
    clock.interrupted()
    expect(stamp(1000, 6) - beforeS).toBeCloseTo(1, 1)
    const times = Array.from({ length: 400 }, (_, i) => stamp(1000 + 12_500 * (i + 1), 6 + (i + 1) / 80))
    expect(times[1]! - times[0]!).toBeCloseTo(0.0125, 9)
    expect(clock.state()).toMatchObject({ clock: 'device', deviceFaults: [] })
  })
})
