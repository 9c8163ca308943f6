import { describe, expect, it } from 'vitest'
import { createBenchModel } from '#acquisition/virtual/benchModel.ts'
import type { ScenarioName } from '#contract/bench/source.ts'
import { zeroBeforeLoad } from '#domain/signal/rest/zeroBeforeLoad.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

/** Counts of one loading of the bench model, whose zero is known. */
function curve(scenario: ScenarioName, rateHz: number, seed: number) {
  const bench = createBenchModel({ scenario, rateHz, seed, breaks: 1, restS: [3, 3], knocksPerHour: 0 })
  const timeUs = new Float64Array(60 * rateHz)
  const counts = new Float64Array(60 * rateHz)
  const count = bench.fill({ timeUs, counts, sequence: new Float64Array(60 * rateHz) })
  const timeS = timeUs.slice(0, count).map((us) => us / 1e6)
  return { timeS, counts: counts.slice(0, count), zeroCounts: bench.characteristic.zeroCounts, bench }
}

describe('zeroBeforeLoad', () => {
  it.each<[ScenarioName, number]>([
    ['brittle', 80],
    ['unloading', 10],
    ['progressive', 1000],
    ['glitches', 80],
    ['hand-pumped', 10],
  ])('finds the zero of the model before a %s loading at %d Hz', (scenario, rateHz) => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const { timeS, counts, zeroCounts, bench } = curve(scenario, rateHz, seed)
      const zero = zeroBeforeLoad(timeS, counts)
      // 100 counts are one noise SD of the model and its hum and drift are less: five standard errors of the mean.
      expect(zero).not.toBeNull()
      const toleranceCounts = (5 * 1) / bench.characteristic.nPerCount / Math.sqrt(zero!.readings) + 50
      expect(Math.abs(zero!.offset - zeroCounts)).toBeLessThan(toleranceCounts)
      expect(zero!.readings).toBeGreaterThanOrEqual(5)
    }
  })

  it('leaves a lone glitch in the rest out of the mean', () => {
    const timeS = Float64Array.from({ length: 600 }, (_, i) => i / 100)
    const force = timeS.map((atS, i) => 50 + ((i * 37) % 11) / 11 - 0.5 + (atS < 3 ? 0 : 400 * (atS - 3)))
    const bare = zeroBeforeLoad(timeS, force)!
    force[250] = 1e6
    const hit = zeroBeforeLoad(timeS, force)!
    expect(Math.abs(bare.offset - 50)).toBeLessThan(0.2)
    expect(Math.abs(hit.offset - 50)).toBeLessThan(0.2)
  })

  it('sees the zero of a short rest with a glitch in the middle of it', () => {
    const timeS = Float64Array.from({ length: 400 }, (_, i) => i / 100)
    const force = timeS.map((atS, i) => 50 + ((i * 37) % 11) / 11 - 0.5 + (atS < 1 ? 0 : 400 * (atS - 1)))
    force[50] = 1e6
    expect(zeroBeforeLoad(timeS, force)?.offset).toBeCloseTo(50, 0)
  })

  it('needs five readings over 0.8 s where nothing is loaded, the first among them', () => {
    const zeroOf = (times: readonly number[]) =>
      zeroBeforeLoad(
        Float64Array.from(times),
        Float64Array.from(times, () => 7),
      )
    expect(zeroOf([0, 0.2, 0.4, 0.6, 0.8])).toEqual({ offset: 7, sd: 0, readings: 5 })
    expect(zeroOf([0, 0.3, 0.6, 0.8])).toBeNull()
    expect(zeroOf([0, 0.2, 0.4, 0.6, 0.79])).toBeNull()
  })

  it('takes no rest after the load, nor a slow rise, for the zero', () => {
    // Loaded from the first sample on, then steady at 20 after the break.
    const timeS = Float64Array.from({ length: 900 }, (_, i) => i / 100)
    const force = timeS.map((atS, i) => ((i * 37) % 11) / 11 - 0.5 + (atS < 4 ? 900 + 1000 * atS : 20))
    expect(zeroBeforeLoad(timeS, force)).toBeNull()
  })

  it('takes the rest of a curve in which nothing is loaded', () => {
    const timeS = Float64Array.from({ length: 300 }, (_, i) => i / 100)
    expect(
      zeroBeforeLoad(
        timeS,
        timeS.map((_, i) => 7 + ((i * 37) % 11) / 11 - 0.5),
      )?.offset,
    ).toBeCloseTo(7, 1)
  })

  it('has no zero to give for no samples, or for fewer than five at rest', () => {
    expect(zeroBeforeLoad(new Float64Array(0), new Float64Array(0))).toBeNull()
    expect(zeroBeforeLoad(Float64Array.of(0, 1, 2), Float64Array.of(1, 1, 1))).toBeNull()
  })
})

describe('the rest that a zero needs', () => {
  /** So much rest at 40 N, with the last digit moving, then 400 N/s; at 1000 Hz. */
  const zeroOf = (restS: number) => {
    const timeS = Float64Array.from({ length: Math.round(1000 * (restS + 4)) }, (_, i) => i / 1000)
    return zeroBeforeLoad(
      timeS,
      timeS.map((t, i) => 40 + 0.01 * ((i * 7) % 3) + (t < restS ? 0 : 400 * (t - restS))),
    )
  }

  it('is 0.2 s at least, to the sample, before a load that comes at once', () => {
    const zeroAfter = (samples: number) => {
      const timeS = Float64Array.from({ length: samples + 4000 }, (_, i) => i / 1000)
      return zeroBeforeLoad(
        timeS,
        timeS.map((_, i) => 40 + 0.01 * ((i * 7) % 3) + (i < samples ? 0 : 400 + 0.4 * (i - samples))),
      )
    }
    expect(zeroAfter(199)).toBeNull()
    expect(zeroAfter(200)?.offset).toBeCloseTo(40.01, 3)
  })

  it('is judged sixteen times in a window, each time with the first sample of another block', () => {
    // 256 samples a second, 16 in a block: fifteen full blocks and one sample.
    const readings = Array.from({ length: 20 }, (_, k) => {
      const restS = 3 + k / 256
      const timeS = Float64Array.from({ length: 1024 }, (_, i) => i / 256)
      const force = timeS.map((t, i) => 40 + 0.01 * ((i * 7) % 3) + (t < restS ? 0 : 400 + 400 * (t - restS)))
      return zeroBeforeLoad(timeS, force)!.readings
    })
    expect(new Set(readings)).toEqual(new Set([241]))
  })

  it('is the same wherever the clock of the curve starts', () => {
    const timeS = Float64Array.from({ length: 4500 }, (_, i) => i / 1000)
    const force = timeS.map((t, i) => 40 + 0.01 * ((i * 7) % 3) + (t < 0.5 ? 0 : 400 * (t - 0.5)))
    const zero = zeroBeforeLoad(timeS, force)
    expect(zero?.offset).toBeCloseTo(40.01, 3)
    for (const startS of [-100, 100]) {
      const later = zeroBeforeLoad(
        timeS.map((t) => t + startS),
        force,
      )
      expect(later?.offset).toBeCloseTo(zero!.offset, 3)
    }
  })

  it('is 0.2 s at least, of which 0.8 are looked at, and a second of a long one', () => {
    expect(limitOf((restS) => zeroOf(restS) !== null, 0.1, 0.4)).toBeGreaterThan(0.19)
    expect(limitOf((restS) => zeroOf(restS) !== null, 0.1, 0.4)).toBeLessThan(0.25)
    expect(zeroOf(0.5)!.readings / 1000).toBeGreaterThan(0.37)
    expect(zeroOf(0.5)!.readings / 1000).toBeLessThan(0.41)
    expect(zeroOf(5)!.readings / 1000).toBeGreaterThan(0.93)
    expect(zeroOf(5)!.readings / 1000).toBeLessThanOrEqual(1.001)
    expect(zeroOf(5)!.offset).toBeCloseTo(40.01, 3)
  })
})
