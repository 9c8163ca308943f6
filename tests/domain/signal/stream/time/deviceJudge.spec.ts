import { describe, expect, it } from 'vitest'
import { createDeviceJudge } from '#domain/signal/stream/time/deviceJudge.ts'
import type { DeviceTimeUnit } from '#domain/signal/stream/time/deviceTime.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

type Sent = { us?: number; seq?: number; arrivalS: number }

/** Judges readings that arrive one by one. */
function judged(sent: readonly Sent[], unit: DeviceTimeUnit = 'us') {
  const judge = createDeviceJudge(unit)
  /** Whether a reading has made a fault known. */
  const news = sent.map(({ us = Number.NaN, seq = Number.NaN, arrivalS }) => {
    const known = judge.faults().length
    judge.see(Float64Array.of(us), Float64Array.of(seq), 0, 1, arrivalS)
    return judge.faults().length > known
  })
  return { judge, news, kinds: judge.faults().map(({ kind }) => kind) }
}

/** So many readings, 100 a second. */
const stream = (count: number, of: (i: number) => { us?: number; seq?: number }): Sent[] =>
  Array.from({ length: count }, (_, i) => ({ ...of(i), arrivalS: i / 100 }))

const good = (i: number) => ({ us: 10_000 * i, seq: i })

describe('a good device', () => {
  it('is trusted, through the ends of its counters too', () => {
    const { judge, kinds } = judged(
      stream(500, (i) => ({ us: (2 ** 32 - 1e6 + 10_000 * i) % 2 ** 32, seq: (2 ** 32 - 100 + i) % 2 ** 32 })),
    )
    expect(kinds).toEqual([])
    expect([judge.trustsTime(), judge.trustsSequence()]).toEqual([true, true])
  })

  it('may have no numbers at all, and may restart', () => {
    expect(judged(stream(500, () => ({}))).kinds).toEqual([])
    expect(judged(stream(500, (i) => good(i % 250))).kinds).toEqual([])
    expect(judged(stream(500, (i) => ({ us: 10_000 * i }))).kinds).toEqual([])
    expect(judged(stream(500, (i) => ({ seq: i }))).kinds).toEqual([])
  })

  it('may send each line twice', () => {
    expect(judged(stream(500, (i) => good(i >> 1))).kinds).toEqual([])
  })

  it('may be played faster or slower than it was taken', () => {
    for (const speed of [0.05, 20, 1000]) expect(judged(stream(500, (i) => good(speed * i))).kinds).toEqual([])
  })
})

describe('a clock', () => {
  it('stands when 0.45 of its steps are nothing', () => {
    // 100 steps a window, the first of them on from a good one.
    const stands = (share: number) =>
      judged(stream(101, (i) => ({ us: 10_000 * Math.max(0, i - Math.round(100 * share)) }))).kinds.length > 0
    expect([0.44, 0.45].map(stands)).toEqual([false, true])
  })

  it('of milliseconds stands only when it does not move in a second', () => {
    const coarse = (everyMs: number) =>
      judged(
        stream(500, (i) => ({ us: 1000 * everyMs * Math.floor((10 * i) / everyMs) })),
        'ms',
      ).kinds
    expect(coarse(500)).toEqual([])
    expect(
      judged(
        stream(500, () => ({ us: 7000 })),
        'ms',
      ).kinds,
    ).toEqual(['time-stands'])
    expect(
      judged(
        stream(500, (i) => ({ us: 1e6 * Math.floor(i / 100) })),
        's',
      ).kinds,
    ).toEqual(['time-stands'])
  })

  it('falls when a quarter of its steps do', () => {
    const falls = (falling: number) => {
      let us = 4e9
      return judged(
        stream(101, (i) => {
          us += i <= falling ? -10_000 : 20_000
          return { us }
        }),
      ).kinds.includes('time-falls')
    }
    expect([24, 25].map(falls)).toEqual([false, true])
  })

  it('of seconds falls as well', () => {
    expect(
      judged(
        stream(200, (i) => ({ us: 9e9 - 10_000 * i })),
        's',
      ).kinds,
    ).toEqual(['time-falls'])
  })

  it.each<[DeviceTimeUnit, number]>([
    ['us', 3000],
    ['ms', 300],
    ['s', 300],
  ])('of %s is too slow below a thirtieth of arrival, too fast above %d of it', (unit, fastest) => {
    const kindAt = (pace: number) =>
      judged(
        stream(350, (i) => ({ us: 10_000 * pace * i })),
        unit,
      ).kinds[0] ?? null
    expect(limitOf((pace) => kindAt(pace) === 'time-slow', 0.001, 1)).toBeCloseTo(1 / 30, 4)
    // Within what half of a counter holds.
    const top = unit === 'us' ? 4000 : 1000
    expect(limitOf((pace) => kindAt(pace) === 'time-fast', 1, top) / fastest).toBeCloseTo(1, 3)
    expect(kindAt(fastest)).toBeNull()
    expect(
      judged(
        stream(350, (i) => ({ us: 10 * i })),
        unit,
      ).judge.faults()[0],
    ).toEqual({
      kind: 'time-slow',
      pace: expect.closeTo(0.001, 6),
    })
  })

  it('has no pace in a window in which it restarts', () => {
    expect(judged(stream(301, (i) => ({ us: 10 * (i % 60) + 5 }))).kinds).toEqual([])
    expect(judged(stream(301, (i) => ({ us: 10 * i + 5 }))).kinds).toEqual(['time-slow'])
  })

  it('may wait for almost three seconds on a computer that stands still, and is too slow when it goes on so', () => {
    // Ten a millisecond; what the line held when the computer stood still comes at once, the rest in its time.
    const waited = (standsS: number) =>
      judged(
        Array.from({ length: 40_000 }, (_, i) => ({
          us: 100 * i,
          arrivalS: i < 10_001 ? i / 10_000 : 1 + standsS + Math.max(0, i - 10_400) / 10_000,
        })),
      ).kinds
    for (const standsS of [1.5, 2, 2.8]) expect(waited(standsS)).toEqual([])
    const slow = (s: number) => judged(stream(Math.round(100 * s) + 1, (i) => ({ us: 10 * i }))).kinds
    expect(slow(2.98)).toEqual([])
    expect(slow(3.02)).toEqual(['time-slow'])
  })
})

describe('numbers', () => {
  it('stand when three quarters of their steps are nothing', () => {
    const stands = (standing: number) =>
      judged(stream(101, (i) => ({ us: 10_000 * i, seq: Math.max(0, i - standing) }))).kinds
    expect(stands(74)).toEqual([])
    expect(stands(75)).toEqual(['sequence-stands'])
  })

  it('fall when a quarter of their steps do', () => {
    const falls = (falling: number) =>
      judged(stream(101, (i) => ({ us: 10_000 * i, seq: i <= falling ? 4e9 - i : 4e9 + i }))).kinds
    expect(falls(24)).toEqual([])
    expect(falls(25)).toEqual(['sequence-falls'])
  })

  it('that stand hide a clock that stands until they are no longer trusted', () => {
    const { news, kinds } = judged(stream(302, () => ({ us: 5, seq: 5 })))
    expect(kinds).toEqual(['sequence-stands', 'time-stands'])
    expect(news.filter((isNew) => isNew)).toHaveLength(1)
  })
})

describe('what is judged', () => {
  it('is a second of arrival, and eight steps', () => {
    const firstNews = (rateHz: number) =>
      judged(Array.from({ length: 2000 }, (_, i) => ({ us: 5, arrivalS: i / rateHz }))).news.indexOf(true)
    expect(firstNews(1000)).toBe(1000)
    expect(firstNews(100)).toBe(100)
    expect(firstNews(4)).toBe(8)
    expect(firstNews(7)).toBe(8)
    expect(firstNews(9)).toBe(9)
  })

  it('is nothing across a silence of more than three seconds', () => {
    // The device goes on counting while the line is silent, or it does not.
    const silent = (silenceS: number) =>
      judged(Array.from({ length: 40 }, (_, i) => ({ us: 100_000 * i, arrivalS: i / 10 + (i >= 5 ? silenceS : 0) })))
        .kinds
    expect(silent(100)).toEqual([])
    const slow = (gapS: number) => judged(Array.from({ length: 40 }, (_, i) => ({ us: 5, arrivalS: i * gapS }))).kinds
    expect(slow(3)).toEqual(['time-stands'])
    expect(slow(3.01)).toEqual([])
  })

  it('begins anew after each window, on from its last reading', () => {
    // Good for a window, then too slow.
    const { kinds } = judged(stream(600, (i) => ({ us: i < 150 ? 10_000 * i : 1_500_000 + 10 * (i - 150) })))
    expect(kinds).toEqual(['time-slow'])
    expect(judged(stream(301, (i) => ({ us: 10_000 * (i < 60 ? 0 : i) }))).kinds).toEqual(['time-stands'])
    expect(judged(stream(301, (i) => ({ us: 10_000 * (i < 40 ? 0 : Math.min(i, 240)) }))).kinds).toEqual([
      'time-stands',
    ])
    expect(judged(stream(301, (i) => ({ us: 10_000 * (i < 40 ? 0 : i < 100 || i > 140 ? i : 100) }))).kinds).toEqual([])
  })

  it('is no reading where none came: a silence goes on through it', () => {
    const judge = createDeviceJudge('us')
    const us = Float64Array.of(5, 5)
    for (let i = 0; i < 40; i++) {
      judge.see(us, us, 0, 1, 4 * i)
      judge.see(us, us, 1, 1, 4 * i + 2)
    }
    expect(judge.faults()).toEqual([])
  })

  it('is the clock, too, where the numbers mean nothing any more', () => {
    expect(judged(stream(500, (i) => ({ us: 10_000 * Math.min(i, 250), seq: 7 }))).kinds).toEqual([
      'sequence-stands',
      'time-stands',
    ])
  })

  it('is told once, and nothing more is judged where nothing is trusted', () => {
    const { judge, news } = judged(stream(500, () => ({ us: 5, seq: 5 })))
    expect(news.filter((isNew) => isNew).length).toBe(1)
    expect([judge.trustsTime(), judge.trustsSequence()]).toEqual([false, false])
    judge.reset()
    expect([judge.trustsTime(), judge.trustsSequence(), judge.faults()]).toEqual([true, true, []])
    judge.see(Float64Array.of(5), Float64Array.of(5), 0, 1, 100)
    expect(judge.faults()).toEqual([])
  })

  it('is the same however the readings are cut', () => {
    const count = 1000
    const us = Float64Array.from({ length: count }, (_, i) => 10 * i)
    const seq = Float64Array.from({ length: count }, (_, i) => i)
    for (const length of [1, 3, 10, 100]) {
      const judge = createDeviceJudge('us')
      for (let from = 0; from < count; from += length) {
        const to = Math.min(count, from + length)
        judge.see(us, seq, from, to, to / 100)
      }
      expect(judge.faults()).toEqual([{ kind: 'time-slow', pace: expect.closeTo(0.001, 2) }])
    }
    // Seven steps are too few: the eighth reading of a chunk does not count what came before it.
    const few = createDeviceJudge('us')
    const standing = us.map(() => 5)
    few.see(standing, seq, 0, 4, 0)
    few.see(standing, seq, 4, 8, 2)
    expect(few.faults()).toEqual([])
    few.see(standing, seq, 8, 9, 2)
    expect(few.faults()).toHaveLength(1)
  })
})
