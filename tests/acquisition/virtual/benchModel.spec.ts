import { describe, expect, it } from 'vitest'
import { type BenchModel, type BenchModelOptions, createBenchModel } from '#acquisition/virtual/benchModel.ts'
import type { LoadingTruth } from '#acquisition/virtual/loading/loadingTruth.ts'
import { curvedCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'

function run(options: BenchModelOptions, block = 4096) {
  const model = createBenchModel(options)
  const samples = {
    timeUs: new Float64Array(block),
    counts: new Float64Array(block),
    sequence: new Float64Array(block),
  }
  const timeUs: number[] = []
  const counts: number[] = []
  const sequence: number[] = []
  for (;;) {
    const written = model.fill(samples)
    for (let i = 0; i < written; i++) {
      timeUs.push(samples.timeUs[i]!)
      counts.push(samples.counts[i]!)
      sequence.push(samples.sequence[i]!)
    }
    if (written < block) return { model, timeUs, counts, sequence }
  }
}

const physical = ({ outcome, peakN, onsetTimeS, breakTimeS, areaMm2, popIns, stickSlip }: LoadingTruth) => ({
  outcome,
  peakN,
  onsetTimeS,
  breakTimeS,
  areaMm2,
  popIns,
  stickSlip,
})

describe('model of the bench', () => {
  it('gives the same samples however they are asked for', () => {
    const options = { scenario: 'mixed', rateHz: 80, seed: 11, breaks: 4 } as const
    const whole = run(options, 100_000)
    for (const block of [1, 7, 1000]) {
      const parts = run(options, block)
      expect(parts.counts).toEqual(whole.counts)
      expect(parts.model.truths).toEqual(whole.model.truths)
    }
  })

  it('loads the same specimens in the same way at every rate', () => {
    const truths = [5, 10, 80, 1000].map((rateHz) =>
      run({ scenario: 'mixed', rateHz, seed: 5, breaks: 3 }).model.truths.map(physical),
    )
    for (const other of truths.slice(1)) expect(other).toEqual(truths[0])
  })

  it('gives another stream for another seed', () => {
    const peaks = [1, 2].map((seed) => run({ scenario: 'brittle', rateHz: 10, seed, breaks: 1 }).model.truths[0]!.peakN)
    expect(peaks[0]).not.toBe(peaks[1])
  })

  it('states the highest sample under load, near the true peak at a high rate', () => {
    for (const scenario of ['brittle', 'pop-in', 'stick-slip', 'hand-pumped', 'glitches'] as const) {
      const { model, timeUs, counts } = run({ scenario, rateHz: 1000, seed: 8, breaks: 2 })
      for (const truth of model.truths) {
        const glitches = new Set(truth.glitchTimesS.map((timeS) => Math.round(timeS * 1e6)))
        let highest = Number.NEGATIVE_INFINITY
        for (let i = 0; i < counts.length; i++) {
          const timeS = timeUs[i]! / 1e6
          if (timeS < truth.onsetTimeS || timeS > truth.endTimeS || glitches.has(timeUs[i]!)) continue
          highest = Math.max(highest, counts[i]!)
        }
        expect(truth.highestSampleCounts).toBe(highest)
        // Within 6 noise SDs (1 N), drift and hum of the physical peak, besides rate x (interval + settling).
        expect(truth.highestSampleN!).toBeGreaterThan(truth.peakN - 12 - truth.loadingRateNPerS * 0.0015)
        expect(truth.highestSampleN!).toBeLessThan(truth.peakN + 12)
      }
    }
  })

  it('leaves the numbers of lost samples out and says how many there were', () => {
    const { model, sequence } = run({ scenario: 'gaps', rateHz: 80, seed: 2, breaks: 5 })
    let missing = 0
    for (let i = 1; i < sequence.length; i++) missing += sequence[i]! - sequence[i - 1]! - 1
    const { sent, dropped } = model.counts()
    expect(missing).toBeGreaterThan(0)
    expect(missing).toBe(dropped)
    expect(sent).toBe(sequence.length)
    const told = model.truths.flatMap((truth) => truth.gaps).reduce((sum, gap) => sum + gap.missing, 0)
    expect(told).toBe(dropped)
    expect(model.truths.map((truth) => truth.droppedSamples).reduce((a, b) => a + b)).toBe(dropped)
  })

  it('stands at the end code and never beyond it when it clips', () => {
    const { model, counts } = run({ scenario: 'clipping', rateHz: 80, seed: 4, breaks: 3 })
    const [, highest] = model.endCodes
    expect(Math.max(...counts)).toBe(highest)
    for (const truth of model.truths) expect(truth.clipped).toBe(true)
  })

  it('puts glitches far from both neighbours', () => {
    const { model, timeUs, counts } = run({ scenario: 'glitches', rateHz: 80, seed: 9, breaks: 6 })
    const all = model.truths.flatMap((truth) => truth.glitchTimesS.map((timeS) => ({ timeS, peakN: truth.peakN })))
    expect(all.length).toBeGreaterThan(5)
    for (const { timeS, peakN } of all) {
      const at = timeUs.indexOf(Math.round(timeS * 1e6))
      const far = 0.15 * peakN * 100
      expect(Math.abs(counts[at]! - counts[at - 2]!)).toBeGreaterThan(far)
      expect(Math.abs(counts[at]! - counts[at + 2]!)).toBeGreaterThan(far)
    }
  })

  it('stays within noise, drift, hum and knocks when nobody loads anything', () => {
    const { model, counts } = run({ scenario: 'idle', rateHz: 10, seed: 1, endS: 3600, knocksPerHour: 0 })
    expect(model.truths).toHaveLength(0)
    expect(counts).toHaveLength(36_000)
    const ordinary = counts.filter((code) => Math.abs(code - model.characteristic.zeroCounts) < 2500)
    // Ten electrical glitches an hour are part of an idle bench.
    expect(ordinary.length).toBeGreaterThan(36_000 - 40)
  })

  it('has converter noise of the SD asked for', () => {
    const { counts } = run({
      scenario: 'idle',
      rateHz: 100,
      seed: 6,
      endS: 600,
      noiseN: 3,
      humN: 0,
      driftN: 0,
      knocksPerHour: 0,
    })
    const calm = counts.filter((code) => Math.abs(code - 48_213) < 3000)
    const mean = calm.reduce((a, b) => a + b) / calm.length
    const sd = Math.sqrt(calm.reduce((sum, code) => sum + (code - mean) ** 2, 0) / (calm.length - 1))
    // Four standard errors of an SD from 60,000 values: 1.2 %.
    expect(Math.abs(sd * 0.01 - 3)).toBeLessThan(0.036)
  })

  it('loads at once when asked, and rests for good after the last specimen', () => {
    const model = createBenchModel({ scenario: 'brittle', rateHz: 100, seed: 1, breaks: 1, restS: [1000, 1000] })
    const samples = { timeUs: new Float64Array(50), counts: new Float64Array(50), sequence: new Float64Array(50) }
    model.fill(samples)
    expect(model.loading()).toBe(false)
    model.loadNow()
    model.fill(samples)
    expect(model.loading()).toBe(true)
    let written = 50
    while (written === 50) written = model.fill(samples)
    expect(model.truths).toHaveLength(1)
    expect(model.truths[0]!.onsetTimeS).toBe(0.5)
    model.loadNow()
    expect(model.fill(samples)).toBe(0)
  })

  it('loads nothing by itself when it is to be asked, and one specimen for each time it is', () => {
    const model = createBenchModel({ scenario: 'brittle', rateHz: 80, seed: 1, byItself: false })
    const second = { timeUs: new Float64Array(80), counts: new Float64Array(80), sequence: new Float64Array(80) }
    const pass = (seconds: number) => {
      for (let s = 0; s < seconds; s++) model.fill(second)
    }
    pass(600)
    expect(model.truths).toHaveLength(0)
    for (const loadings of [1, 2]) {
      model.loadNow()
      pass(600)
      expect(model.truths).toHaveLength(loadings)
      expect(model.loading()).toBe(false)
    }
  })

  it('refuses a rate that no amplifier here has', () => {
    expect(() => createBenchModel({ scenario: 'idle', rateHz: 1, seed: 1 })).toThrow(RangeError)
  })
})

describe('weights on the virtual cell', () => {
  const options = { scenario: 'brittle', rateHz: 80, seed: 5, noiseN: 0, humN: 0, driftN: 0, knocksPerHour: 0 } as const
  const curved = { ...curvedCharacteristic, curvature: 0 }

  /** Newtons on the straight scale at the end of so many seconds. */
  function after(model: BenchModel, seconds: number): number {
    const length = seconds * 80
    const samples = {
      timeUs: new Float64Array(length),
      counts: new Float64Array(length),
      sequence: new Float64Array(length),
    }
    model.fill(samples)
    return (samples.counts[length - 1]! - curved.zeroCounts) * curved.nPerCount
  }

  it('stand on the cell instead of a specimen until they are taken off', () => {
    const model = createBenchModel({ ...options, characteristic: curved })
    model.putWeights(1500)
    expect(after(model, 30)).toBeCloseTo(1500, 1)
    expect(model.loading()).toBe(false)
    model.putWeights(0)
    expect(after(model, 2)).toBeCloseTo(0, 1)
    expect(model.loading()).toBe(false)
    after(model, 4)
    expect(model.loading()).toBe(true)
  })

  it('read higher coming down than going up, and the cell forgets when it is free again', () => {
    const model = createBenchModel({ ...options, characteristic: curved })
    model.holdPress(true)
    const read = (forceN: number) => {
      model.putWeights(forceN)
      return after(model, 8)
    }
    expect(read(1000)).toBeCloseTo(1000, 1)
    read(2000)
    // 4 h F (1 - F/M) at half the highest force, which the swing has carried a little beyond 2000 N: 1.0 N.
    expect(read(1000)).toBeCloseTo(1001, 0)
    expect(read(1000) - 1000).toBeGreaterThan(0.9)
    read(0)
    expect(read(1000)).toBeCloseTo(1000, 1)
  })

  it('wait for no press that is held', () => {
    const model = createBenchModel({ ...options, characteristic: curved })
    model.holdPress(true)
    after(model, 60)
    expect(model.loading()).toBe(false)
    model.holdPress(false)
    after(model, 4)
    expect(model.loading()).toBe(true)
  })
})
