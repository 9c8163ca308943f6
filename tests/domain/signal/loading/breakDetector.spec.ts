import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { type BreakDetector, createBreakDetector } from '#domain/signal/loading/breakDetector.ts'

const settings = detectionSettings.parse({ capacityN: 25_000 })

type Step = { untilS: number; toN: number }

/** Force that moves along straight lines between corners, with normal noise. */
function drawn(corners: readonly Step[], rateHz: number, noiseN: number, seed = 1) {
  const random = createRandom(seed)
  const timeS: number[] = []
  const force: number[] = []
  let fromS = 0
  let fromN = 0
  for (const { untilS, toN } of corners) {
    for (let i = timeS.length; i / rateHz < untilS; i++) {
      const t = i / rateHz
      timeS.push(Math.round(t * 1e6) / 1e6)
      force.push(fromN + ((toN - fromN) * (t - fromS)) / (untilS - fromS) + noiseN * random.normal())
    }
    fromS = untilS
    fromN = toN
  }
  return { timeS: Float64Array.from(timeS), force: Float64Array.from(force) }
}

/** Hands a whole stream to a detector, whose forces are readings too. */
function takeAll(detector: BreakDetector, { timeS, force }: { timeS: Float64Array; force: Float64Array }): void {
  for (let i = 0; i < timeS.length; ) i = detector.take(timeS, force, force, i, timeS.length)
}

/** Runs a drawn stream through the live detector. */
function detect(curve: { timeS: Float64Array; force: Float64Array }, used = settings) {
  const results: (EvaluationResult & { firstTimeS: number })[] = []
  let firstTimeS = 0
  const detector = createBreakDetector(used, {
    begin(start) {
      firstTimeS = start.firstTimeS
    },
    end: (result) => results.push({ ...result, firstTimeS }),
  })
  takeAll(detector, curve)
  detector.finish()
  return results
}

describe('a bench below its zero', () => {
  const loadAndBreak = (fromS: number, toN: number) => [
    { untilS: fromS, toN: 0 },
    { untilS: fromS + 8, toN },
    { untilS: fromS + 8.01, toN: 0 },
    { untilS: fromS + 12, toN: 0 },
  ]
  const noted = (curve: ReturnType<typeof drawn>, used = settings) =>
    detect(curve, used).map(({ outcome, peakN, firstTimeS, onsetTimeS }) => ({
      outcome,
      peakN: peakN === null ? null : Math.round(peakN / 10) * 10,
      onsetS: onsetTimeS === null ? null : Math.round(firstTimeS + onsetTimeS),
    }))

  describe.each([25_000, null])('with a capacity of %s', (capacityN) => {
    const used = detectionSettings.parse({ capacityN })
    it.each([80, 1000])('takes what a reversed cell reads at %d Hz for no load, nor that it lets go', (rateHz) => {
      const reversed = [
        { untilS: 5, toN: 0 },
        { untilS: 13, toN: -5000 },
        { untilS: 13.01, toN: 0 },
      ]
      expect(noted(drawn([...reversed, { untilS: 60, toN: 0 }], rateHz, 2), used)).toEqual([])
      // Turned round, the next load is one.
      expect(noted(drawn([...reversed, ...loadAndBreak(20, 4000)], rateHz, 2), used)).toEqual([
        { outcome: 'break', peakN: 4000, onsetS: 20 },
      ])
    })

    it.each([0.05, 2])(
      'goes on with the load that comes after a fixture was lifted off and put back in %d s',
      (inS) => {
        const lifted = [
          { untilS: 5, toN: 0 },
          { untilS: 5.5, toN: -800 },
          { untilS: 20, toN: -800 },
          { untilS: 20 + inS, toN: 0 },
        ]
        expect(noted(drawn([...lifted, { untilS: 60, toN: 0 }], 80, 2), used)).toEqual([])
        expect(noted(drawn([...lifted, ...loadAndBreak(26, 4000)], 80, 2), used)).toEqual([
          { outcome: 'break', peakN: 4000, onsetS: 26 },
        ])
      },
    )

    it('catches a load that begins below zero and goes on above it', () => {
      const corners = [
        { untilS: 5, toN: 0 },
        { untilS: 5.5, toN: -800 },
        { untilS: 10, toN: -800 },
        { untilS: 20, toN: 4000 },
        { untilS: 20.01, toN: -800 },
        { untilS: 24, toN: -800 },
      ]
      expect(noted(drawn(corners, 80, 2), used)).toMatchObject([{ outcome: 'break', peakN: 4000 }])
    })
  })
})

describe('the start of a capture', () => {
  it('keeps the pre-trigger samples from before the onset', () => {
    const [result] = detect(
      drawn(
        [
          { untilS: 5, toN: 0 },
          { untilS: 15, toN: 5000 },
          { untilS: 15.01, toN: 100 },
          { untilS: 18, toN: 100 },
        ],
        80,
        1,
      ),
    )
    expect(result!.firstTimeS).toBeGreaterThan(3.5)
    expect(result!.firstTimeS).toBeLessThan(4.2)
    expect(result!.firstTimeS + result!.onsetTimeS!).toBeCloseTo(5, 1)
  })

  it('is not set off by a lone knock that rings', () => {
    const curve = drawn([{ untilS: 60, toN: 0 }], 1000, 1)
    curve.force.forEach((f, i) => {
      const u = curve.timeS[i]! - 30
      if (u > 0) curve.force[i] = f + 400 * Math.exp(-u / 0.06) * Math.sin(2 * Math.PI * 17 * u)
    })
    expect(detect(curve)).toEqual([])
  })

  it('notices a slow press that would be taken for drift by a zero that follows it', () => {
    const [result] = detect(
      drawn(
        [
          { untilS: 10, toN: 0 },
          { untilS: 70, toN: 1800 },
          { untilS: 70.01, toN: 20 },
          { untilS: 73, toN: 20 },
        ],
        80,
        1,
      ),
    )
    expect(result).toMatchObject({ outcome: 'break' })
  })

  it('follows a drifting zero without a capture', () => {
    const curve = drawn(
      [
        { untilS: 600, toN: 60 },
        { untilS: 1800, toN: -80 },
      ],
      20,
      1,
    )
    expect(detect(curve)).toEqual([])
  })
})

describe('break or unloading', () => {
  const upTo = (peakN: number): Step[] => [
    { untilS: 3, toN: 0 },
    { untilS: 13, toN: peakN },
  ]

  it('calls a fall of 60 % in 0.2 s a break and one of 60 % in 2 s an unloading', () => {
    const quick = detect(drawn([...upTo(5000), { untilS: 13.2, toN: 2000 }, { untilS: 15, toN: 2000 }], 100, 1))
    const slow = detect(
      drawn([...upTo(5000), { untilS: 15, toN: 2000 }, { untilS: 20, toN: 0 }, { untilS: 25, toN: 0 }], 100, 1),
    )
    expect(quick).toMatchObject([{ outcome: 'break' }])
    expect(slow).toMatchObject([{ outcome: 'unloading', breakTimeS: null, afterBreakN: null }])
    expect(slow[0]!.peakN).toBeGreaterThan(4990)
  })

  it('calls a failure in several sudden steps within a second one break', () => {
    const steps = [4000, 3200, 2400, 1600, 800].flatMap((toN, i) => [
      { untilS: 13 + 0.3 * i + 0.004, toN },
      { untilS: 13 + 0.3 * (i + 1), toN },
    ])
    const results = detect(drawn([...upTo(5000), ...steps, { untilS: 17, toN: 0 }, { untilS: 20, toN: 0 }], 500, 1))
    expect(results.map(({ outcome }) => outcome)).toEqual(['break'])
  })

  it('goes on through a dropout of three samples', () => {
    const curve = drawn([...upTo(5000), { untilS: 13.01, toN: 100 }, { untilS: 16, toN: 100 }], 200, 1)
    for (const i of [1500, 1501, 1502]) curve.force[i] = 0
    const results = detect(curve)
    expect(results).toMatchObject([{ outcome: 'break' }])
    expect(results[0]!.peakN).toBeGreaterThan(4980)
  })

  it('goes on when a bump has come and gone and the load is still there', () => {
    const corners = [
      ...upTo(3000),
      { untilS: 13.03, toN: 5100 },
      { untilS: 13.05, toN: 2850 },
      { untilS: 13.1, toN: 3300 },
      { untilS: 20, toN: 6000 },
      { untilS: 20.01, toN: 100 },
      { untilS: 23, toN: 100 },
    ]
    const results = detect(drawn(corners, 400, 1))
    expect(results).toMatchObject([{ outcome: 'break' }])
    expect(results[0]!.peakN).toBeGreaterThan(5980)
  })

  it('takes no knock during the toe of a loading for its break', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const corners = [
        { untilS: 3, toN: 0 },
        { untilS: 23, toN: 2000 },
        { untilS: 23.01, toN: 100 },
        { untilS: 26, toN: 100 },
      ]
      const curve = drawn(corners, 320, 1, seed)
      curve.force.forEach((f, i) => {
        const u = curve.timeS[i]! - 3.7 - seed * 0.005
        if (u > 0) curve.force[i] = f + 200 * Math.exp(-u / 0.06) * Math.sin(2 * Math.PI * 18 * u)
      })
      const results = detect(curve)
      expect(results).toMatchObject([{ outcome: 'break' }])
      expect(results[0]!.peakN).toBeGreaterThan(1980)
    }
  })

  it('does not take friction on the broken faces for a second loading', () => {
    const results = detect(
      drawn(
        [
          ...upTo(5000),
          { untilS: 13.01, toN: 300 },
          { untilS: 16, toN: 700 },
          { untilS: 16.05, toN: 0 },
          { untilS: 20, toN: 0 },
        ],
        200,
        1,
      ),
    )
    expect(results.length).toBe(1)
  })

  it('finds the next loading when the break has shifted the zero', () => {
    const results = detect(
      drawn(
        [
          ...upTo(5000),
          { untilS: 13.01, toN: 400 },
          { untilS: 20, toN: 400 },
          { untilS: 30, toN: 4000 },
          { untilS: 30.01, toN: 400 },
          { untilS: 35, toN: 400 },
        ],
        200,
        1,
      ),
    )
    expect(results).toMatchObject([{ outcome: 'break' }, { outcome: 'break' }])
    expect(results[1]!.peakN).toBeGreaterThan(3980)
  })

  it('finds no specimen in a weight that is put on the bench and taken away', () => {
    const unknownCapacity = detectionSettings.parse({})
    const results = detect(
      drawn(
        [
          { untilS: 5, toN: 0 },
          { untilS: 5.02, toN: 60 },
          { untilS: 9, toN: 60 },
          { untilS: 9.02, toN: 0 },
          { untilS: 15, toN: 0 },
        ],
        100,
        1,
      ),
      unknownCapacity,
    )
    expect(results.filter(({ outcome }) => outcome !== 'none')).toEqual([])
  })

  it('finds the break of a specimen that is struck rather than pressed', () => {
    const corners = [
      { untilS: 5, toN: 0 },
      { untilS: 5.1, toN: 6000 },
      { untilS: 5.102, toN: 100 },
      { untilS: 8, toN: 0 },
    ]
    const results = detect(drawn(corners, 2000, 1))
    expect(results).toMatchObject([{ outcome: 'break' }])
    expect(results[0]!.peakN).toBeGreaterThan(5900)
  })

  it('ends a capture that is cut off without calling it a break', () => {
    expect(detect(drawn(upTo(5000), 100, 1))).toMatchObject([{ outcome: 'unloading' }])
  })
})

describe('the detector itself', () => {
  it('does not forget the signal at rest while a capture runs', () => {
    const detector = createBreakDetector(settings, { begin() {}, end() {} })
    const { timeS, force } = drawn(
      [
        { untilS: 3, toN: 0 },
        { untilS: 13, toN: 5000 },
      ],
      100,
      1,
    )
    takeAll(detector, { timeS, force })
    expect(detector.capturing()).toBe(true)
    expect(() => detector.reset()).toThrow(TypeError)
    detector.finish()
    expect(detector.capturing()).toBe(false)
    detector.reset()
  })

  it('tells noise and threshold at rest', () => {
    const detector = createBreakDetector(detectionSettings.parse({}), { begin() {}, end() {} })
    expect(detector.atRest()).toEqual({ noise: null, startThreshold: null })
    const { timeS, force } = drawn([{ untilS: 30, toN: 0 }], 100, 2)
    takeAll(detector, { timeS, force })
    const { noise, startThreshold } = detector.atRest()
    // 15 blocks of 20 samples: the median of 15 variances with 18 degrees of freedom lies within 30 % of the true SD.
    expect(noise! / 2).toBeGreaterThan(0.7)
    expect(noise! / 2).toBeLessThan(1.3)
    expect(startThreshold).toBe(5 * noise!)
  })

  it('has no threshold to tell where a signal that never moves and no capacity give none', () => {
    const detector = createBreakDetector(detectionSettings.parse({}), { begin() {}, end() {} })
    takeAll(detector, drawn([{ untilS: 5, toN: 0 }], 100, 0))
    expect(detector.atRest()).toEqual({ noise: 0, startThreshold: null })
  })
})

describe('blocks of samples', () => {
  /** Everything that a detector tells of a stream, and what it knows of the rest afterwards. */
  function heard(
    curve: { timeS: Float64Array; force: Float64Array },
    used: typeof settings,
    feed: (detector: BreakDetector) => void,
  ) {
    const told: unknown[] = []
    const detector = createBreakDetector(used, {
      begin: (start) => told.push(start),
      end: (result) => told.push(result),
    })
    feed(detector)
    told.push(detector.capturing(), detector.atRest())
    detector.finish()
    return { told, samples: curve.timeS.length }
  }

  it('give the same answers however the stream is cut, drops and a second loading with it', () => {
    const curve = drawn(
      [
        { untilS: 5, toN: 0 },
        { untilS: 9, toN: 2000 },
        { untilS: 9.01, toN: 1600 },
        { untilS: 15, toN: 5000 },
        { untilS: 15.01, toN: 100 },
        { untilS: 22, toN: 20 },
        { untilS: 30, toN: 4000 },
        { untilS: 33, toN: 0 },
        { untilS: 36, toN: 0 },
      ],
      80,
      3,
    )
    const { timeS, force } = curve
    const whole = heard(curve, settings, (detector) => takeAll(detector, curve))
    expect(whole.told.length).toBe(6)
    const random = createRandom(20)
    for (const longest of [1, 9, 200])
      expect(
        heard(curve, settings, (detector) => {
          for (let i = 0; i < timeS.length; )
            i = detector.take(timeS, force, force, i, Math.min(timeS.length, i + random.wholeBetween(1, longest)))
        }),
      ).toEqual(whole)
  })

  it('end at the sample at which a capture begins or ends', () => {
    const { timeS, force } = drawn(
      [
        { untilS: 5, toN: 0 },
        { untilS: 15, toN: 5000 },
        { untilS: 15.01, toN: 100 },
        { untilS: 18, toN: 100 },
      ],
      100,
      1,
    )
    const told: [string, number][] = []
    const single = createBreakDetector(settings, {
      begin: ({ samples }) => told.push(['begin', samples]),
      end: ({ samples }) => told.push(['end', samples]),
    })
    const at: number[] = []
    timeS.forEach((_t, i) => {
      const before = told.length
      single.take(timeS, force, force, i, i + 1)
      if (told.length > before) at.push(i + 1)
    })
    expect(told.map(([what]) => what)).toEqual(['begin', 'end'])
    const detector = createBreakDetector(settings, { begin() {}, end() {} })
    const stops: number[] = []
    while ((stops.at(-1) ?? 0) < timeS.length)
      stops.push(detector.take(timeS, force, force, stops.at(-1) ?? 0, timeS.length))
    expect(stops).toEqual([...at, timeS.length])
  })
})

describe('the sample with which a loading is noticed', () => {
  const used = detectionSettings.parse({ startThresholdN: 20, startHoldS: 1 / 16 })
  /** Begins of captures, in samples since the rise began, and ends, of a stream of 128 samples a second. */
  function noted(forceAt: (sample: number) => number, samples: number, asked = used) {
    const timeS = Float64Array.from({ length: samples }, (_, i) => i / 128)
    const force = timeS.map((_, i) => forceAt(i) + (i % 2 === 0 ? 3 : -3))
    const began: number[] = []
    const ended: [number, string][] = []
    let at = 0
    const detector = createBreakDetector(asked, {
      begin: () => began.push(at),
      end: ({ outcome }) => ended.push([at, outcome]),
    })
    for (; at < samples; at++) detector.take(timeS, force, force, at, at + 1)
    return { began, ended, detector }
  }

  it('tells by its force whether the rise only leads back to zero', () => {
    // 10 N a sample from a level more than three thresholds below zero: above it by one after 3 samples, and 8 more are the hold.
    const rising = (levelN: number) => noted((i) => (i <= 512 ? levelN : levelN + 10 * (i - 512)), 600).began[0]!
    // -85 + 110 = 25 N are more than the threshold, 15 N of -95 N are none: then the front begins anew, with 16 samples and a hold.
    expect(rising(-85)).toBe(512 + 11)
    expect(rising(-95)).toBeGreaterThan(512 + 11 + 16)
  })

  it('is the one from which a capture without a load is given up after 10 s', () => {
    // The level at rest may follow by 20 N in a minute. At 128 N in a minute the load is noticed, but the samples of the capture
    // do not go back far enough to show it: it begins 11 s before, at its level then.
    const slow = (i: number) => Math.min(45, (i * 64) / (60 * 128))
    const { began, ended } = noted(slow, 128 * 80)
    expect(began.length).toBe(1)
    expect(ended).toEqual([[began[0]! + 1281, 'none']])
  })

  it('gives a threshold that is small, too', () => {
    const { detector } = noted(() => 0, 500, detectionSettings.parse({ startThresholdN: 0.5 }))
    expect(detector.atRest().startThreshold).toBe(0.5)
  })
})

describe('after an unloading', () => {
  it('the next load is looked for at once, also while the last has not gone', () => {
    // 40 N are left and move by 20 N, which is no rest.
    const wobble = Array.from({ length: 10 }, (_, i) => ({ untilS: 18 + i * 0.5, toN: i % 2 === 0 ? 25 : 45 }))
    const corners = [
      { untilS: 3, toN: 0 },
      { untilS: 13, toN: 1000 },
      { untilS: 17, toN: 40 },
      ...wobble,
      { untilS: 30, toN: 500 },
      { untilS: 30.01, toN: 0 },
      { untilS: 33, toN: 0 },
    ]
    const used = detectionSettings.parse({ startThresholdN: 20 })
    expect(detect(drawn(corners, 100, 0.5), used).map(({ outcome }) => outcome)).toEqual(['unloading', 'break'])
  })
})
