import { describe, expect, it } from 'vitest'
import { createVirtualAmplifier } from '#acquisition/virtual/virtualAmplifier.ts'
import type { ScenarioName } from '#contract/bench/source.ts'
import { evaluateRawCurve } from '#domain/signal/loading/evaluateRawCurve.ts'
import { listenedSession, playAmplifier, settingsWith, storedSamples } from '#tests/fakes/listenedSession.ts'

const quick = { knocksPerHour: 0, restS: [3, 4] as const }

describe('a capture', () => {
  it.each<[ScenarioName, number, number]>([
    ['brittle', 80, 0.015],
    ['brittle', 1000, 0.015],
    ['progressive', 80, 0.3],
    ['hand-pumped', 200, 0.004],
    ['pop-in', 80, 0.015],
    ['stick-slip', 500, 0.05],
    ['unloading', 80, 0.015],
    ['glitches', 80, 0.015],
    ['gaps', 80, 0.015],
    ['brittle', 10, 0.2],
  ])(
    'of %s at %d Hz, in pieces of %d s, ends with what evaluating the stored samples gives',
    (scenario, rateHz, stepS) => {
      const heard = listenedSession()
      const amplifier = playAmplifier(heard, { scenario, rateHz, seed: 11, breaks: 2, ...quick }, stepS)
      const { truths } = amplifier.bench
      expect(heard.captures.length).toBe(2)
      for (const [index, capture] of heard.captures.entries()) {
        const { settings } = capture.start
        expect(capture.ending).toBe('complete')
        expect(settings.startThresholdN).toBeGreaterThan(0)
        const stored = storedSamples(capture)
        const again = evaluateRawCurve(stored, {
          readingUnit: 'counts',
          scale: { kind: 'uncalibrated-scale', nPerCount: 0.01 },
          tare: capture.tare,
          settings,
        })
        expect(capture.result).toEqual(again)
        expect(capture.result!.outcome).toBe(truths[index]!.outcome)
      }
    },
  )

  it('begins with the pre-trigger samples, at time 0, and rises in whole microseconds', () => {
    const heard = listenedSession()
    const amplifier = playAmplifier(heard, { scenario: 'brittle', rateHz: 80, seed: 3, breaks: 1, ...quick })
    const { timeS } = storedSamples(heard.captures[0]!)
    const [truth] = amplifier.bench.truths
    expect(timeS[0]).toBe(0)
    expect(heard.captures[0]!.start.streamTimeS).toBeLessThanOrEqual(truth!.onsetTimeS)
    for (const { block } of heard.captures[0]!.blocks)
      for (const [i, time] of block.timeUs.entries()) {
        expect(Number.isInteger(time)).toBe(true)
        if (i > 0) expect(time).toBeGreaterThan(block.timeUs[i - 1]!)
      }
    const lastS = heard.captures[0]!.start.streamTimeS + timeS.at(-1)!
    expect(lastS).toBeGreaterThan(truth!.breakTimeS! + 0.5 - 2 / 80)
    // About a second before the onset as the detector saw it while it watched.
    expect(heard.captures[0]!.result!.onsetTimeS!).toBeGreaterThan(0.8)
  })

  it('hands on its samples at least every tenth of a second', () => {
    const heard = listenedSession()
    playAmplifier(heard, { scenario: 'brittle', rateHz: 80, seed: 3, breaks: 1, ...quick }, 0.01)
    const { blocks } = heard.captures[0]!
    for (let i = 1; i < blocks.length; i++)
      expect(blocks[i]!.atS - blocks[i - 1]!.atS).toBeLessThanOrEqual(0.1 + 0.0126)
  })

  it('shows while it runs the peak that it will have, and no lone glitch for it', () => {
    const heard = listenedSession()
    playAmplifier(heard, { scenario: 'glitches', rateHz: 80, seed: 5, breaks: 2, ...quick })
    expect(heard.captures.length).toBe(2)
    for (const [index, { start, result }] of heard.captures.entries()) {
      const untilS = heard.captures[index + 1]?.start.streamTimeS ?? Number.POSITIVE_INFINITY
      const peaks = heard.frames.filter(({ timeS }) => timeS[0]! >= start.streamTimeS && timeS[0]! < untilS)
      const shown = peaks.map(({ peak }) => peak).filter((peak) => peak !== null)
      expect(shown.length).toBeGreaterThan(50)
      expect(Math.max(...shown)).toBe(result!.peakN)
    }
    // There were glitches that a look at every sample would have taken for the peak.
    const highest = Math.max(...heard.frames.flatMap(({ force }) => [...force]))
    expect(highest).toBeGreaterThan(1.2 * Math.max(...heard.captures.map(({ result }) => result!.peakN!)))
  })

  it('is kept as interrupted when the device goes away, and the next one is caught after it is back', () => {
    const heard = listenedSession()
    const options = { scenario: 'brittle', rateHz: 80, seed: 3, breaks: 2, ...quick } as const
    const amplifier = createVirtualAmplifier(options)
    const give = (until: () => boolean) => {
      while (!amplifier.over() && !until()) {
        heard.clock.step(0.02)
        heard.session.bytes(amplifier.bytesUntil(amplifier.givenUntilS() + 0.02), heard.clock.nowS())
      }
    }
    give(() => heard.captures.length === 1 && heard.captures[0]!.blocks.length > 20)
    heard.session.interrupted()
    expect(heard.captures[0]).toMatchObject({ ending: 'interrupted' })
    const samples = storedSamples(heard.captures[0]!)
    expect(heard.captures[0]!.result!.samples).toBe(samples.timeS.length)
    // Back only when the first specimen is out.
    while (amplifier.bench.truths.length === 0) amplifier.bytesUntil(amplifier.givenUntilS() + 0.02)
    heard.clock.step(5)
    heard.session.resumed()
    give(() => false)
    expect(heard.captures.at(-1)).toMatchObject({ ending: 'complete', result: { outcome: 'break' } })
  })

  it('finds breaks in counts where there is no scale, and gives no force', () => {
    const heard = listenedSession({
      scaleFor: () => ({ kind: 'none' }),
      settings: settingsWith({ capacityN: null }),
    })
    playAmplifier(heard, { scenario: 'brittle', rateHz: 80, seed: 5, breaks: 1, ...quick })
    expect(heard.captures[0]!.result).toMatchObject({ outcome: 'break', peakN: null, loadingRateNPerS: null })
    expect(heard.frames.at(-1)?.unit).toBe('counts')
  })

  it('holds no rated load in newtons against counts, and keeps it for the day on which there is a scale', () => {
    const scaled = { scaleFor: () => ({ kind: 'none' }) as const }
    const options = { scenario: 'brittle', rateHz: 80, seed: 5, breaks: 1, ...quick } as const
    const bare = listenedSession({ ...scaled, settings: settingsWith({ capacityN: null }) })
    playAmplifier(bare, options)
    const heard = listenedSession({ ...scaled, settings: settingsWith({ capacityN: 25_000 }) })
    playAmplifier(heard, options)
    const [capture] = heard.captures
    expect(capture!.result!.flags).toEqual(['no-scale'])
    expect(capture!.result).toEqual(bare.captures[0]!.result)
    expect(capture!.start.settings.capacityN).toBe(25_000)
    const stored = { readingUnit: 'counts', scale: { kind: 'none' }, tare: capture!.tare } as const
    expect(evaluateRawCurve(storedSamples(capture!), { ...stored, settings: capture!.start.settings })).toEqual(
      capture!.result,
    )
  })

  it('does not begin while disarmed, though the live signal goes on', () => {
    const heard = listenedSession({ armed: false })
    const options = { scenario: 'brittle', rateHz: 80, seed: 5, breaks: 2, ...quick } as const
    const amplifier = playAmplifier(heard, options, 0.015, () => false)
    expect(heard.captures).toEqual([])
    const highest = Math.max(...heard.frames.flatMap(({ force }) => [...force]))
    expect(Math.abs(highest - Math.max(...amplifier.bench.truths.map((truth) => truth.highestSampleN!)))).toBeLessThan(
      5,
    )
  })

  it('is caught once armed again', () => {
    const heard = listenedSession({ armed: false })
    const options = { scenario: 'brittle', rateHz: 80, seed: 5, breaks: 2, ...quick } as const
    const amplifier = createVirtualAmplifier(options)
    while (!amplifier.over()) {
      heard.clock.step(0.02)
      heard.session.bytes(amplifier.bytesUntil(amplifier.givenUntilS() + 0.02), heard.clock.nowS())
      if (amplifier.bench.truths.length === 1) heard.session.arm(true)
    }
    expect(heard.captures.map(({ result }) => result?.outcome)).toEqual(['break'])
  })
})

describe('the zero', () => {
  it('is taken by itself once the signal is steady, within the noise of the true zero', () => {
    const heard = listenedSession()
    playAmplifier(heard, { scenario: 'idle', rateHz: 80, seed: 1, endS: 5, knocksPerHour: 0 })
    expect(heard.tares.length).toBe(1)
    // Zero of the virtual amplifier: 48,213 counts at 0.01 N each; drift up to 2 N.
    expect(Math.abs(heard.tares[0]!.offset - 482.13)).toBeLessThan(3)
    expect(heard.tares[0]!.readings).toBeGreaterThan(60)
  })

  it('is taken anew after each break, when the specimen is out', () => {
    const heard = listenedSession()
    playAmplifier(heard, { scenario: 'brittle', rateHz: 80, seed: 2, breaks: 3, ...quick })
    expect(heard.captures.length).toBe(3)
    expect(heard.tares.length).toBeGreaterThanOrEqual(3)
    expect(heard.captures.every(({ tare }) => Math.abs(tare!.offset - 482.13) < 5)).toBe(true)
  })

  it('is refused by hand while the force changes, with the reason, and while a capture runs', () => {
    const heard = listenedSession()
    expect(() => heard.session.takeTare()).toThrow(expect.objectContaining({ code: 'not-stable' }))
    playAmplifier(
      heard,
      { scenario: 'brittle', rateHz: 80, seed: 2, breaks: 1, ...quick },
      0.015,
      () => heard.captures.length > 0,
    )
    expect(() => heard.session.takeTare()).toThrow(/a break is recorded/)
  })

  it('is taken by hand when the signal is steady', () => {
    const heard = listenedSession()
    playAmplifier(heard, { scenario: 'idle', rateHz: 80, seed: 1, endS: 8, knocksPerHour: 0 })
    const before = heard.tares.length
    heard.session.takeTare()
    expect(heard.tares.length).toBe(before + 1)
    expect(heard.session.tare()).toEqual(heard.tares.at(-1))
  })
})

describe('the live signal', () => {
  it('comes in about thirty frames a second and loses no peak', () => {
    const heard = listenedSession()
    const amplifier = playAmplifier(heard, { scenario: 'brittle', rateHz: 10_000, seed: 4, breaks: 1, ...quick }, 0.005)
    const seconds = heard.clock.nowS()
    expect(heard.frames.length / seconds).toBeGreaterThan(20)
    expect(heard.frames.length / seconds).toBeLessThan(31)
    const highest = Math.max(...heard.frames.flatMap(({ force }) => [...force]))
    expect(Math.abs(highest - amplifier.bench.truths[0]!.highestSampleN!)).toBeLessThan(5)
    const times = heard.frames.flatMap(({ timeS }) => [...timeS])
    for (let i = 1; i < times.length; i++) expect(times[i]!).toBeGreaterThan(times[i - 1]!)
  })

  it('tells rate, clock and noise at most ten times a second', () => {
    const heard = listenedSession()
    playAmplifier(heard, { scenario: 'idle', rateHz: 80, seed: 1, endS: 10, knocksPerHour: 0 })
    const last = heard.signals.at(-1)!
    expect(last.clock).toBe('device')
    expect(last.sampleRateHz).toBeCloseTo(80, 1)
    // The model's noise is 1 N, slowed by a converter that settles within a quarter of an interval.
    expect(last.noise).toBeGreaterThan(0.5)
    expect(last.noise).toBeLessThan(1.5)
    expect(last.unstableBecause).toBeNull()
    expect(heard.signals.length).toBeLessThanOrEqual(101)
  })

  it('counts missing samples and lines that are no reading', () => {
    const heard = listenedSession()
    const amplifier = playAmplifier(heard, {
      scenario: 'idle',
      rateHz: 80,
      seed: 1,
      endS: 20,
      damagedShare: 0.02,
      knocksPerHour: 0,
    })
    const { damaged } = amplifier.lines()
    const last = heard.signals.at(-1)!
    expect(damaged).toBeGreaterThan(10)
    // Told once a second, and what is left when the stream ends.
    heard.session.stop()
    expect(heard.rejected.reduce((sum, { count }) => sum + count, 0)).toBe(damaged)
    expect(last.missingSamples).toBeGreaterThan(0.5 * damaged)
    expect(heard.gaps.reduce((sum, { missing }) => sum + missing, 0)).toBe(last.missingSamples)
    expect(last.rejectedExample).toContain('BL')
  })
})

describe('a device that is not right', () => {
  const line = (words: string) => new TextEncoder().encode(words)

  /** Sends 80 lines a second for so long. */
  function send(heard: ReturnType<typeof listenedSession>, seconds: number, lineOf: (i: number) => string) {
    for (let i = 0; i < 80 * seconds; i++) {
      heard.clock.step(1 / 80)
      heard.session.bytes(line(`${lineOf(i)}\n`), heard.clock.nowS())
    }
  }
  /** Counts of a loading of 4000 N that begins at 6 s and breaks at 10 s, with some noise. */
  const counts = (i: number) => {
    const timeS = i / 80
    return 48_213 + ((i * 37) % 100) + Math.round(timeS < 6 || timeS > 10 ? 0 : 100_000 * (timeS - 6))
  }

  it('whose clock stands is captured by the times of arrival, and is said to be so', () => {
    const heard = listenedSession({ lineFormat: { name: 'columns', columns: ['time_us', 'counts'] } })
    send(heard, 13, (i) => `12345,${counts(i)}`)
    expect(heard.signals.at(-1)!.deviceFaults).toEqual([{ kind: 'time-stands', pace: null }])
    expect(heard.captures.map(({ result }) => result?.outcome)).toEqual(['break'])
    expect(heard.captures[0]!.result!.peakN).toBeCloseTo(4000, -1)
    expect(heard.captures[0]!.result!.loadingRateNPerS! / 1000).toBeCloseTo(1, 1)
  })

  it('that restarts says so, loses no reading and counts none as missing', () => {
    const heard = listenedSession({ lineFormat: { name: 'columns', columns: ['seq', 'time_us', 'counts'] } })
    send(heard, 4, (i) => `${9000 + i},${900_000_000 + 12_500 * i},48213`)
    heard.clock.step(2)
    send(heard, 4, (i) => `${i},${12_500 * i},48213`)
    expect(heard.restarts).toHaveLength(1)
    expect(heard.gaps).toEqual([])
    expect(heard.signals.at(-1)).toMatchObject({ missingSamples: 0, restarts: 1, deviceFaults: [] })
  })

  it('that sends one early line in another unit is read in the unit of all that follow', () => {
    const heard = listenedSession({ lineFormat: { name: 'number', columns: [] } })
    send(heard, 13, (i) => (i < 2 ? '5 g' : `${counts(i)}`))
    expect(heard.session.readingUnit()).toBe('counts')
    expect(heard.signals.at(-1)!.rejectedLines).toBe(2)
    expect(heard.captures.map(({ result }) => result?.outcome)).toEqual(['break'])
    expect(heard.captures[0]!.start.readingUnit).toBe('counts')
  })

  it('that changes its unit while a capture runs ends it there, and takes its zero anew', () => {
    const heard = listenedSession({ lineFormat: { name: 'number', columns: [] } })
    send(heard, 8, (i) => `${counts(i)}`)
    expect(heard.captures).toHaveLength(1)
    send(heard, 4, () => '480.5 N')
    expect(heard.captures[0]).toMatchObject({ ending: 'interrupted' })
    expect(storedSamples(heard.captures[0]!).readings.every((reading) => reading > 1000)).toBe(true)
    expect(heard.session.tare()?.offset).toBeCloseTo(4.805, 3)
  })

  it('that stands at the end of its range is given no zero, and says why', () => {
    const heard = listenedSession({ lineFormat: { name: 'number', columns: [] } })
    send(heard, 5, () => '8388607')
    expect(heard.session.tare()).toBeNull()
    expect(heard.signals.at(-1)!.unstableBecause).toBe('the converter stands at the end of its range')
    expect(heard.captures).toEqual([])
  })

  it('whose rated load is in newtons is held against none while it sends counts without a scale', () => {
    const heard = listenedSession({ lineFormat: { name: 'number', columns: [] }, scaleFor: () => ({ kind: 'none' }) })
    send(heard, 5, () => '4821300')
    expect(heard.session.tare()?.offset).toBe(4_821_300)
  })
})
