import { describe, expect, it } from 'vitest'
import { type EvaluationResult, type LoadCourse, loadCourse } from '#contract/breaks/evaluation.ts'
import { defaultPractices, type TestPractice } from '#contract/settings/practice.ts'
import { judgeLoading } from '#domain/signal/practice/judgeLoading.ts'

const practiceOf = (name: string) => defaultPractices.find((practice) => practice.name === name)!
const open = { least: null, most: null }
const nothingLimited: TestPractice = {
  name: 'made for this test',
  source: 'invented',
  timeToFailureS: open,
  rateNPerS: open,
  rateMPaPerS: open,
  speedMmPerMin: open,
  samplingBoundPercent: null,
}

const course = (given: Partial<LoadCourse>): LoadCourse =>
  loadCourse.parse({
    peaks: 1,
    timeToPeakS: 20,
    timeToFailureS: 20,
    meanRateNPerS: 500,
    rates: [],
    rateSpreadPercent: null,
    toe: null,
    impulseNs: null,
    pressSpeedMmPerS: null,
    workJ: null,
    ...given,
  })

function result(given: Partial<LoadCourse> | null, more: Partial<EvaluationResult> = {}): EvaluationResult {
  return {
    outcome: 'break',
    peakN: 10_000,
    peakTimeS: 20,
    onsetTimeS: 0,
    breakTimeS: 20,
    sampleRateHz: 80,
    samples: 1600,
    missingSamples: 0,
    noiseN: 1,
    loadingRateNPerS: 500,
    samplingBoundN: 6.25,
    samplingBoundPercent: 0.0625,
    afterBreakN: 100,
    flags: [],
    events: [],
    course: given === null ? null : course(given),
    ...more,
  }
}

const verdicts = (lines: ReturnType<typeof judgeLoading>) =>
  Object.fromEntries(lines.map(({ aspect, verdict }) => [aspect, verdict]))

describe('judging a loading by a practice', () => {
  it('says nothing where a practice limits nothing', () => {
    expect(judgeLoading(result({}), 600, nothingLimited)).toEqual([])
  })

  it.each([
    // ASTM D905, apparatus clause: 5 mm/min (0.20 in/min) ± 25 %, that is 3.75 to 6.25 mm/min; quoted at second hand.
    [5 / 60, 'inside'],
    [3.75 / 60, 'inside'],
    [6.25 / 60, 'inside'],
    [3.74 / 60, 'outside'],
    [6.26 / 60, 'outside'],
    // 0.20 in/min and 0.25 in/min, 1 in = 25.4 mm exactly: 5.08 and 6.35 mm/min.
    [(0.2 * 25.4) / 60, 'inside'],
    [(0.25 * 25.4) / 60, 'outside'],
  ])('finds a press of %f mm/s %s the 5 mm/min ± 25 % of D905', (pressSpeedMmPerS, verdict) => {
    const [speed, bound] = judgeLoading(result({ pressSpeedMmPerS }), 1935.48, practiceOf('ASTM D905'))
    expect(speed).toMatchObject({ aspect: 'speed', limits: { least: 3.75, most: 6.25 }, verdict })
    expect(speed!.value).toBeCloseTo(60 * pressSpeedMmPerS, 9)
    expect(bound).toMatchObject({ aspect: 'sampling-bound', verdict: 'inside' })
  })

  it.each([
    // 50 mm/min as EN 205 has it, from memory, with a tolerance of 10 % of the program's own.
    [49.9, 'inside'],
    [50.1, 'inside'],
    [44.9, 'outside'],
    [55.1, 'outside'],
  ])('finds a press of %f mm/min %s the 50 mm/min of EN 205', (speedMmPerMin, verdict) => {
    const pressSpeedMmPerS = speedMmPerMin / 60
    expect(verdicts(judgeLoading(result({ pressSpeedMmPerS }), null, practiceOf('EN 205')))).toEqual({
      speed: verdict,
      'sampling-bound': 'inside',
    })
  })

  it('takes 50 mm/min, kept as mm/s, for a limit of exactly that', () => {
    const practice = { ...practiceOf('EN 205'), speedMmPerMin: { least: 50, most: 50 } }
    expect(verdicts(judgeLoading(result({ pressSpeedMmPerS: 0.8333333333333334 }), null, practice))).toEqual({
      speed: 'inside',
      'sampling-bound': 'inside',
    })
  })

  it('does not guess the speed of a press', () => {
    const [speed] = judgeLoading(result({}), 600, practiceOf('ASTM D905'))
    expect(speed).toMatchObject({ value: null, verdict: 'not-known', unknownBecause: 'no-speed' })
  })

  it.each([
    [4.9, 'outside', 'below', null],
    [5, 'inside', null, null],
    [60, 'inside', null, null],
    [61, 'outside', 'above', null],
    [null, 'not-known', null, 'no-failure'],
  ] as const)(
    'finds a failure after %s s %s the 5 s to 60 s of a hand press',
    (timeToFailureS, verdict, side, unknownBecause) => {
      const [time] = judgeLoading(result({ timeToFailureS }), 600, practiceOf('Hand press'))
      expect(time).toMatchObject({ aspect: 'time-to-failure', value: timeToFailureS, verdict, side, unknownBecause })
    },
  )

  it('turns a rate into a rate of stress: 967.74 N/s on 3 in² are 0.5 MPa/s', () => {
    // 3 in² = 3 x 645.16 mm² = 1935.48 mm² exactly (1 in = 25.4 mm); 967.74 / 1935.48 = 0.5.
    const practice = {
      ...nothingLimited,
      rateMPaPerS: { least: 0.4, most: 0.6 },
      rateNPerS: { least: null, most: 900 },
    }
    const lines = judgeLoading(result({ meanRateNPerS: 967.74 }), 1935.48, practice)
    expect(verdicts(lines)).toEqual({ rate: 'outside', 'stress-rate': 'inside' })
    expect(lines[0]!.side).toBe('above')
    expect(lines[1]!.value).toBeCloseTo(0.5, 12)
    const unknown = judgeLoading(result({ meanRateNPerS: 967.74 }), null, practice)[1]!
    expect(unknown).toMatchObject({ verdict: 'not-known', value: null, unknownBecause: 'no-area' })
  })

  it('judges the sampling bound and names the rate that would do', () => {
    // 2000 N/s every 1/10 s: 200 N, 8 % of 2500 N. ISO 6892-1 Annex A, f = (force rate) / (F q) x 100, from memory: 1 % needs
    // 2000 / 2500 x 100 = 80 per second.
    const slow = result(
      {},
      { peakN: 2500, loadingRateNPerS: 2000, sampleRateHz: 10, samplingBoundN: 200, samplingBoundPercent: 8 },
    )
    const practice = { ...nothingLimited, samplingBoundPercent: 1 }
    const [bound] = judgeLoading(slow, null, practice)
    expect(bound).toMatchObject({ aspect: 'sampling-bound', value: 8, limits: { least: null, most: 1 } })
    expect(bound!.verdict).toBe('outside')
    expect(bound!.cure).toEqual({ kind: 'sample-faster', sampleRateHz: 80 })
    // To two digits, never down: 10 x 123.4, 10 x 8.03 and 10 x 5.301 per second.
    for (const [samplingBoundPercent, allowed, needed] of [
      [123.4, 1, 1300],
      [8.03, 1, 81],
      [0.5301, 0.1, 54],
    ] as const) {
      const line = judgeLoading({ ...slow, samplingBoundPercent }, null, {
        ...practice,
        samplingBoundPercent: allowed,
      })[0]!
      expect(line.cure).toEqual({ kind: 'sample-faster', sampleRateHz: needed })
    }
    expect(judgeLoading(result({}, { samplingBoundPercent: null }), null, practice)[0]!.verdict).toBe('not-known')
    const hidden = judgeLoading({ ...slow, flags: ['gap', 'gap-at-peak'] }, null, practice)[0]!
    expect(hidden.cure).toEqual({ kind: 'close-the-gap' })
    const clipped = judgeLoading(result({}, { samplingBoundPercent: null, flags: ['clipped'] }), null, practice)[0]!
    expect(clipped).toMatchObject({ verdict: 'not-known', unknownBecause: 'clipped' })
  })

  it('knows nothing of a result that an older method made, and says so', () => {
    const practice = { ...practiceOf('ASTM D905'), timeToFailureS: { least: 5, most: null } }
    for (const line of judgeLoading(result(null), 600, practice).slice(0, 2)) {
      expect(line).toMatchObject({ verdict: 'not-known', unknownBecause: 'older-method' })
    }
    const [time] = judgeLoading(result(null, { outcome: 'none' }), 600, practice)
    expect(time!.unknownBecause).toBe('nothing-loaded')
  })

  it('lets the last bits of a limit pass, and no more', () => {
    const limited = { ...nothingLimited, timeToFailureS: { least: 10, most: 20 } }
    const verdictOf = (timeToFailureS: number) => judgeLoading(result({ timeToFailureS }), null, limited)[0]!.verdict
    expect([10 * (1 - 5e-10), 20 * (1 + 5e-10)].map(verdictOf)).toEqual(['inside', 'inside'])
    expect([10 * (1 - 5e-9), 20 * (1 + 5e-9)].map(verdictOf)).toEqual(['outside', 'outside'])
  })

  it('names no rate where that of the samples is not known, and none for what is too fast or too high otherwise', () => {
    const practice = { ...nothingLimited, samplingBoundPercent: 1, rateNPerS: { least: null, most: 9 } }
    const lines = judgeLoading(result({}, { samplingBoundPercent: 8, sampleRateHz: null }), null, practice)
    expect(lines.map(({ cure }) => cure)).toEqual([null, { kind: 'sample-faster', sampleRateHz: null }])
  })

  it('rounds a rate up to two digits, large or small', () => {
    const needed = (sampleRateHz: number) =>
      judgeLoading(result({}, { samplingBoundPercent: 2, sampleRateHz }), null, {
        ...nothingLimited,
        samplingBoundPercent: 1,
      })[0]!.cure
    for (const [rateHz, neededHz] of [
      [5, 10],
      [5.05, 11],
      [48_000, 96_000],
      [0.0601, 0.13],
      [50.1, 110],
      [495.5, 1000],
    ] as const)
      expect(needed(rateHz)).toEqual({ kind: 'sample-faster', sampleRateHz: neededHz })
  })

  it('knows why it knows nothing of a speed: an older method, or nobody gave it', () => {
    const practice = { ...nothingLimited, rateNPerS: { least: 1, most: null } }
    expect(judgeLoading(result(null), null, practice)[0]!.unknownBecause).toBe('older-method')
    expect(judgeLoading(result({ meanRateNPerS: null }), null, practice)[0]!.unknownBecause).toBe('no-rate')
  })

  it('takes any area above 0', () => {
    const practice = { ...nothingLimited, rateMPaPerS: { least: 0.4, most: null } }
    expect(judgeLoading(result({ meanRateNPerS: 5 }), 0.5, practice)[0]!.value).toBeCloseTo(10, 12)
  })

  it('wants an area above 0', () => {
    expect(() => judgeLoading(result({}), 0, nothingLimited)).toThrow(RangeError)
  })
})
