import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { evaluateCurve } from '#domain/signal/loading/evaluateCurve.ts'
import { runBench } from '#tests/reference/corpus.ts'

const settings = detectionSettings.parse({})

/** 2 s at rest, a straight ramp to the peak in 10 s, a fall within one interval, then friction. */
function rampCurve(options: { rateHz: number; peakN: number; restS?: number; noiseN?: number; afterN?: number }) {
  const { rateHz, peakN, restS = 2, noiseN = 0, afterN = 0 } = options
  const random = createRandom(3)
  const count = Math.round((restS + 12) * rateHz)
  const timeS = Float64Array.from({ length: count }, (_, i) => i / rateHz)
  const force = timeS.map((t) => {
    const u = t - restS
    return (u <= 0 ? 0 : u <= 10 + 1e-9 ? (peakN * u) / 10 : afterN) + noiseN * random.normal()
  })
  return { timeS, force }
}

/** All numbers that are times or forces, for comparison under a change of scale or origin. */
function near(result: EvaluationResult, expected: EvaluationResult, tolerance = 1e-9) {
  expect(Object.keys(result)).toEqual(Object.keys(expected))
  for (const [key, value] of Object.entries(expected)) {
    const got = result[key as keyof EvaluationResult]
    if (typeof value !== 'number') {
      if (key !== 'events' && key !== 'course') expect(got).toEqual(value)
    } else expect(Math.abs((got as number) - value)).toBeLessThanOrEqual(tolerance * Math.max(1, Math.abs(value)))
  }
  expect(result.events.map(({ kind, cycles }) => ({ kind, cycles }))).toEqual(
    expected.events.map(({ kind, cycles }) => ({ kind, cycles })),
  )
  const [numbers, wanted] = [courseNumbers(result), courseNumbers(expected)]
  expect(numbers.length).toBe(wanted.length)
  numbers.forEach((value, i) => {
    expect(Math.abs(value - wanted[i]!)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(wanted[i]!)))
  })
}

/** All numbers of the course of a load, in the order of their names. */
function courseNumbers({ course }: EvaluationResult): number[] {
  if (course === null) return []
  const { rates, toe, ...single } = course
  return [
    ...rates.flatMap(Object.values),
    ...(toe === null ? [] : Object.values(toe)),
    ...Object.values(single),
  ].filter((value) => value !== null) as number[]
}

/** The course of a load that lies later and is larger by a factor. */
function movedCourse({ course }: EvaluationResult, byS: number, factor: number): EvaluationResult['course'] {
  if (course === null) return null
  const times = (value: number | null) => (value === null ? null : value * factor)
  return {
    ...course,
    meanRateNPerS: times(course.meanRateNPerS),
    impulseNs: times(course.impulseNs),
    workJ: times(course.workJ),
    rates: course.rates.map(({ fromS, toS, rateNPerS }) => ({
      fromS: fromS + byS,
      toS: toS + byS,
      rateNPerS: rateNPerS * factor,
    })),
    toe:
      course.toe === null
        ? null
        : { zeroTimeS: course.toe.zeroTimeS + byS, slopeNPerS: course.toe.slopeNPerS * factor },
  }
}

describe('a curve of known truth', () => {
  it('is read exactly when there is no noise', () => {
    const { timeS, force } = rampCurve({ rateHz: 100, peakN: 5000, afterN: 250 })
    const result = evaluateCurve(timeS, force, null, settings)
    expect(result).toMatchObject({
      outcome: 'break',
      peakN: 5000,
      samples: 1400,
      missingSamples: 0,
      flags: [],
      noiseN: 0,
    })
    expect(result.peakTimeS).toBeCloseTo(12, 9)
    expect(result.breakTimeS).toBeCloseTo(12, 9)
    expect(result.onsetTimeS).toBeCloseTo(2, 1)
    expect(result.loadingRateNPerS).toBeCloseTo(500, 6)
    // 500 N/s x 0.01 s
    expect(result.samplingBoundN).toBeCloseTo(5, 6)
    expect(result.samplingBoundPercent).toBeCloseTo(0.1, 8)
    expect(result.afterBreakN).toBeCloseTo(250, 9)
    expect(result.sampleRateHz).toBeCloseTo(100, 6)
  })

  it('says that sampling was too slow when the bound is above 1 % of the peak', () => {
    const { timeS, force } = rampCurve({ rateHz: 8, peakN: 4000 })
    const result = evaluateCurve(timeS, force, null, settings)
    expect(result.samplingBoundN).toBeCloseTo(50, 6)
    expect(result.flags).toContain('sampling-too-slow')
  })

  it('that starts under load says so and still has its peak', () => {
    const { timeS, force } = rampCurve({ rateHz: 80, peakN: 5000, restS: -1, noiseN: 1 })
    const result = evaluateCurve(timeS, force, null, settings)
    expect(result).toMatchObject({ outcome: 'break', noiseN: null })
    expect(result.flags).toContain('no-pre-trigger')
    expect(Math.abs(result.peakN! - 5000)).toBeLessThan(10)
  })

  it('that starts at first contact still evaluates', () => {
    const { timeS, force } = rampCurve({ rateHz: 80, peakN: 5000, restS: 0, noiseN: 1 })
    expect(evaluateCurve(timeS, force, null, settings)).toMatchObject({ outcome: 'break' })
  })

  it('of nothing but noise has no peak', () => {
    const { timeS, force } = rampCurve({ rateHz: 80, peakN: 0, noiseN: 2 })
    expect(evaluateCurve(timeS, force, null, settings)).toMatchObject({ outcome: 'none', peakN: null, events: [] })
  })

  it('that is empty or has one sample has no peak', () => {
    const none = new Float64Array(0)
    expect(evaluateCurve(none, none, null, settings)).toMatchObject({ outcome: 'none', samples: 0, sampleRateHz: null })
    expect(evaluateCurve(Float64Array.of(1), Float64Array.of(5), null, settings)).toMatchObject({
      outcome: 'none',
      samples: 1,
    })
  })

  it('with a pre-load cycle before it gives the break, and counts all samples', () => {
    const first = rampCurve({ rateHz: 100, peakN: 900 })
    // The pre-load is let off slowly, over 3 s.
    first.force.forEach((_, i) => {
      if (first.timeS[i]! > 12) first.force[i] = Math.max(0, 900 - (first.timeS[i]! - 12) * 600)
    })
    const second = rampCurve({ rateHz: 100, peakN: 5000 })
    const timeS = Float64Array.from([...first.timeS, ...second.timeS.map((t) => t + 14)])
    const force = Float64Array.from([...first.force, ...second.force])
    const result = evaluateCurve(timeS, force, null, settings)
    expect(result).toMatchObject({ outcome: 'break', peakN: 5000, samples: 2800 })
    expect(result.peakTimeS).toBeCloseTo(26, 9)
  })

  it('keeps the highest sample of a ramp that breaks between two samples of a slow device', () => {
    const { timeS, force } = rampCurve({ rateHz: 5, peakN: 5000 })
    expect(evaluateCurve(timeS, force, null, settings)).toMatchObject({ outcome: 'break', peakN: 5000, breakTimeS: 12 })
  })

  it('marks an end code, and a flat top where the codes are not known', () => {
    const { timeS, force } = rampCurve({ rateHz: 200, peakN: 6000, noiseN: 1 })
    const clipped = force.map((f) => Math.min(4000, f))
    // Above the end of the converter nothing bounds the true peak.
    const unbounded = { samplingBoundN: null, samplingBoundPercent: null }
    expect(evaluateCurve(timeS, clipped, null, settings)).toMatchObject({
      ...{ peakN: 4000, flags: ['clipped'], ...unbounded },
    })
    const coded = evaluateCurve(timeS, clipped, clipped, { ...settings, endCodes: [-4000, 4000] })
    expect(coded).toMatchObject({ peakN: 4000, flags: ['clipped'] })
    // Without readings nothing can be compared with the codes.
    expect(evaluateCurve(timeS, force, null, { ...settings, endCodes: [-4000, 4000] }).flags).toEqual([])
    expect(evaluateCurve(timeS, force, null, { ...settings, capacityN: 5500 }).flags).toEqual(['over-capacity'])
  })

  it.each([
    ['to an end code', 8_388_607],
    ['to zero', 0],
    ['below zero', -5000],
  ])('leaves a lone glitch %s out of its peak', (_name, value) => {
    const { timeS, force } = rampCurve({ rateHz: 80, peakN: 5000, noiseN: 1 })
    const plain = evaluateCurve(timeS, force, null, settings)
    for (const width of [1, 2]) {
      const glitched = force.slice()
      for (let i = 0; i < width; i++) glitched[600 + i] = value
      const result = evaluateCurve(timeS, glitched, null, settings)
      expect(result.peakN).toBe(plain.peakN)
      expect(result.flags).toEqual(['glitch'])
      expect(result.events.filter(({ kind }) => kind === 'glitch')).toMatchObject([
        { startTimeS: timeS[600], endTimeS: timeS[600 + width - 1] },
      ])
    }
  })

  it.each([8, 10, 12])('takes the flicker of a converter of %i bits for none, and still sees a true one', (bits) => {
    // Noise of a tenth of a code hides in the codes while the load rests, and flickers as the ramp leaves the first of them.
    const code = 12_000 / 2 ** bits
    const { timeS, force } = rampCurve({ rateHz: 1000, peakN: 5000, noiseN: code / 10 })
    const coarse = force.map((value) => code * Math.round(value / code))
    const result = evaluateCurve(timeS, coarse, null, settings)
    expect(result).toMatchObject({ outcome: 'break', flags: [] })
    expect(result.events.filter(({ kind }) => kind === 'glitch')).toEqual([])
    for (const at of [100, 9000]) {
      const glitched = coarse.slice()
      glitched[at]! += 40 * code
      expect(evaluateCurve(timeS, glitched, null, settings)).toMatchObject({ peakN: result.peakN, flags: ['glitch'] })
    }
  })

  it('is not misled by a curve that begins with a glitch', () => {
    const { timeS, force } = rampCurve({ rateHz: 10, peakN: 5000, noiseN: 1 })
    const { peakN } = evaluateCurve(timeS, force, null, settings)
    force[0] = 9000
    force[30] = 12_000
    const result = evaluateCurve(timeS, force, null, settings)
    expect(result).toMatchObject({ outcome: 'break', peakN })
    expect(result.events.filter(({ kind }) => kind === 'glitch').map(({ startTimeS }) => startTimeS)).toEqual([0, 3])
  })

  it('counts what a gap has swallowed and says when it lies over the peak', () => {
    const { timeS, force } = rampCurve({ rateHz: 80, peakN: 5000, noiseN: 1 })
    const without = (from: number, to: number) => {
      const keep = (_: number, i: number) => i < from || i >= to
      return evaluateCurve(timeS.filter(keep), force.filter(keep), null, settings)
    }
    expect(without(500, 520)).toMatchObject({ missingSamples: 20, flags: ['gap'], outcome: 'break' })
    // The peak is sample 960.
    const hidden = without(950, 965)
    expect(hidden).toMatchObject({ missingSamples: 15, flags: ['gap', 'gap-at-peak'], outcome: 'break' })
    // From sample 949 to sample 965 the load could rise for 16 intervals.
    expect(hidden.samplingBoundN).toBeCloseTo((hidden.loadingRateNPerS! * 16) / 80, 6)
    expect(without(500, 520).samplingBoundN).toBeCloseTo(without(500, 520).loadingRateNPerS! / 80, 6)
  })

  it('refuses numbers that are none, and times that do not rise', () => {
    expect(() => evaluateCurve(Float64Array.of(0, 1), Float64Array.of(0), null, settings)).toThrow('one length')
    const two = Float64Array.of(0, 1)
    for (const readings of [Float64Array.of(0), Float64Array.of(0, 1, 2)])
      expect(() => evaluateCurve(two, two, readings, settings)).toThrow('one length')
    expect(() => evaluateCurve(two, Float64Array.of(0), two, settings)).toThrow('one length')
    expect(() => evaluateCurve(Float64Array.of(0, 0), Float64Array.of(0, 0), null, settings)).toThrow('sample 2')
    expect(() => evaluateCurve(Float64Array.of(0), Float64Array.of(Number.NaN), null, settings)).toThrow('finite')
  })
})

describe('invariance', () => {
  const curves = (['brittle', 'pop-in', 'stick-slip', 'hand-pumped', 'unloading', 'gaps', 'glitches'] as const).flatMap(
    (scenario) =>
      runBench({ scenario, rateHz: 80, seed: 5, breaks: 1, keepSamples: true, settings: { capacityN: null } }).captures,
  )

  it('the place of a curve in time changes nothing but its times', () => {
    for (const { timeS, force, settings: recorded } of curves) {
      const at0 = evaluateCurve(timeS, force, null, recorded)
      for (const byS of [1.25, 86_400, 1e6, -3]) {
        const moved = evaluateCurve(
          timeS.map((t) => t + byS),
          force,
          null,
          recorded,
        )
        const later = (t: number | null) => (t === null ? null : t + byS)
        const expected = {
          ...at0,
          peakTimeS: later(at0.peakTimeS),
          onsetTimeS: later(at0.onsetTimeS),
          breakTimeS: later(at0.breakTimeS),
          course: movedCourse(at0, byS, 1),
        }
        near(moved, expected)
      }
    }
  })

  it('the unit of force changes nothing but the forces', () => {
    for (const { timeS, force, settings: recorded } of curves) {
      const at1 = evaluateCurve(timeS, force, null, recorded)
      for (const factor of [1 / 1024, 4]) {
        const scale = (f: number | null) => (f === null ? null : f * factor)
        const scaled = evaluateCurve(
          timeS,
          force.map((f) => f * factor),
          null,
          {
            ...recorded,
            startThresholdN: scale(recorded.startThresholdN),
          },
        )
        near(scaled, {
          ...at1,
          peakN: scale(at1.peakN),
          noiseN: scale(at1.noiseN),
          loadingRateNPerS: scale(at1.loadingRateNPerS),
          samplingBoundN: scale(at1.samplingBoundN),
          afterBreakN: scale(at1.afterBreakN),
          course: movedCourse(at1, 0, factor),
        })
      }
    }
  })
})

describe('a curve of several loadings', () => {
  type Loading = { peakN: number; breaks: boolean }
  /** Loadings of 14 s each, one after another from a time on: up to a peak in 10 s, and off it at once or in 1.5 s. */
  function curveOf(loadings: readonly Loading[], fromS = 50) {
    const timeS = Float64Array.from({ length: 1400 * loadings.length }, (_, i) => fromS + i / 100)
    const force = timeS.map((_, i) => {
      const { peakN, breaks } = loadings[Math.floor(i / 1400)]!
      const u = (i % 1400) / 100 - 2
      return u <= 0 ? 0 : u <= 10 ? (peakN * u) / 10 : breaks ? 0 : Math.max(0, peakN * (1 - (u - 10) / 1.5))
    })
    return { timeS, force }
  }
  const result = (...loadings: readonly Loading[]) => {
    const { timeS, force } = curveOf(loadings)
    return evaluateCurve(timeS, force, null, detectionSettings.parse({ startThresholdN: 20 }))
  }
  const broken = (peakN: number) => ({ peakN, breaks: true })
  const letDown = (peakN: number) => ({ peakN, breaks: false })
  const nothing = { peakN: 0, breaks: false }

  it.each([
    ['the first break of two', [broken(900), broken(2000)], 'break', 62],
    ['a break before a higher unloading', [broken(900), letDown(2000)], 'break', 62],
    ['a break after a higher unloading', [letDown(2000), broken(900)], 'break', 76],
    ['the higher of two unloadings, the second', [letDown(900), letDown(2000)], 'unloading', 76],
    ['the higher of two unloadings, the first', [letDown(2000), letDown(900)], 'unloading', 62],
    ['the first of two unloadings as high', [letDown(900), letDown(900)], 'unloading', 62],
    ['an unloading, whatever little comes after it', [letDown(900), { peakN: 55, breaks: true }], 'unloading', 62],
    ['an unloading, whatever little came before it', [{ peakN: 55, breaks: true }, letDown(900)], 'unloading', 76],
    ['a loading after rest', [nothing, broken(900)], 'break', 76],
  ] as const)('gives %s', (_name, loadings, outcome, peakS) => {
    const found = result(...loadings)
    expect(found).toMatchObject({ outcome, samples: 2800, missingSamples: 0 })
    expect(found.peakTimeS).toBeCloseTo(peakS, 9)
  })

  it('tells everything in the time of the curve', () => {
    const found = result(letDown(900), broken(2000))
    const drop = found.events.find(({ kind }) => kind === 'final-drop')!
    expect(drop.startTimeS).toBeCloseTo(76, 1)
    expect(drop.endTimeS).toBeGreaterThan(drop.startTimeS)
    expect(drop.endTimeS).toBeLessThan(76.5)
    expect(found.breakTimeS).toBeCloseTo(76, 9)
    expect(found.onsetTimeS).toBeCloseTo(66, 0)
    expect(found.course!.toe!.zeroTimeS).toBeCloseTo(66, 1)
  })
})
