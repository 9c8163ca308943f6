import { describe, expect, it } from 'vitest'
import { createBenchModel } from '#acquisition/virtual/benchModel.ts'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { type BreakDetector, createBreakDetector } from '#domain/signal/loading/breakDetector.ts'
import { evaluateCurve } from '#domain/signal/loading/evaluateCurve.ts'
import { type BenchRunOptions, everyKind, runBench } from './corpus.ts'

const settings = detectionSettings.parse({ capacityN: 25_000 })

describe('a live capture and its stored curve', () => {
  const cases: BenchRunOptions[] = everyKind.flatMap((scenario) =>
    [10, 80, 1000].map((rateHz) => ({ scenario, rateHz, seed: 7, breaks: 2, knocksPerHour: 120, keepSamples: true })),
  )

  it.each(cases)('give the same result: $scenario at $rateHz Hz', (options) => {
    for (const capacityN of [25_000, null]) {
      const { captures } = runBench({ ...options, settings: { capacityN, endCodes: [-524_288, 524_287] } })
      expect(captures.length).toBeGreaterThanOrEqual(2)
      for (const { timeS, force, readings, settings: recorded, result } of captures)
        expect(evaluateCurve(timeS, force, readings, recorded)).toEqual(result)
    }
  })
})

describe('a stream of the bench model', () => {
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

  /** The samples of a run of the bench model, as the live detector gets them. */
  function streamOf(options: BenchRunOptions) {
    const bench = createBenchModel({ breaks: 2, knocksPerHour: 200, restS: [3, 5], ...options })
    const { zeroCounts, nPerCount } = bench.characteristic
    const timeS: number[] = []
    const readings: number[] = []
    const block = { timeUs: new Float64Array(4096), counts: new Float64Array(4096), sequence: new Float64Array(4096) }
    for (let count = block.timeUs.length; count === block.timeUs.length; ) {
      count = bench.fill(block)
      timeS.push(...block.timeUs.subarray(0, count).map((us) => us / 1e6))
      readings.push(...block.counts.subarray(0, count))
    }
    const reading = Float64Array.from(readings)
    return { timeS: Float64Array.from(timeS), reading, force: reading.map((r) => (r - zeroCounts) * nPerCount) }
  }

  const cases = (
    [
      'brittle',
      'progressive',
      'pop-in',
      'stick-slip',
      'hand-pumped',
      'unloading',
      'clipping',
      'glitches',
      'gaps',
    ] as const
  ).flatMap((scenario, i) => [20, 80, 1000].map((rateHz) => ({ scenario, rateHz, seed: 20 + i })))

  it.each(cases)('give the same answers however the stream is cut: $scenario at $rateHz Hz', (options) => {
    const curve = streamOf(options)
    const { timeS, force, reading } = curve
    const count = timeS.length
    for (const endCodes of [null, [-524_288, 524_287] as [number, number]]) {
      const used = { ...settings, capacityN: endCodes === null ? null : 25_000, endCodes }
      const whole = heard(curve, used, (detector) => {
        for (let i = 0; i < count; ) i = detector.take(timeS, force, reading, i, count)
      })
      expect(whole.told.length).toBeGreaterThan(4)
      const random = createRandom(options.seed)
      for (const longest of [1, 9, 200, 9000]) {
        let stopped = false
        const blocks = heard(curve, used, (detector) => {
          for (let i = 0; i < count; ) {
            const to = Math.min(count, i + random.wholeBetween(1, longest))
            const next = detector.take(timeS, force, reading, i, to)
            stopped ||= next <= i || next > to
            i = next
          }
        })
        expect(blocks.told).toEqual(whole.told)
        expect(stopped).toBe(false)
      }
    }
  })
})
