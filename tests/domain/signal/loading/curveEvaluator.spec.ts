import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { createCurveEvaluator } from '#domain/signal/loading/curveEvaluator.ts'
import { cutStream } from '#tests/fakes/streams/cutStream.ts'

type Drawn = { timeS: Float64Array; force: Float64Array }

/** 2 s at rest, then 500 N/s up to 5000 N, 100 N from 12 s on; every 10 ms, with steps of 1 N at rest. */
function loading({ lengthS = 14, without = (_timeS: number): boolean => false } = {}): Drawn {
  const timeS = Float64Array.from({ length: Math.round(lengthS * 100) }, (_, i) => i / 100).filter((t) => !without(t))
  const load = (t: number) => (t <= 2 ? 0 : t <= 12 ? 500 * (t - 2) : 100)
  return { timeS, force: timeS.map((t, i) => load(t) + (i % 2)) }
}

/** Hands a curve to the machine, cut into blocks up to a length. */
function evaluated({ timeS, force }: Drawn, { longest = 1000, settings = {}, finish = true } = {}) {
  const evaluator = createCurveEvaluator(detectionSettings.parse({ startThresholdN: 20, ...settings }))
  let taken = 0
  for (const [from, to] of cutStream(createRandom(longest), timeS.length, longest))
    if (!evaluator.over()) taken = evaluator.take(timeS, force, force, from, to)
  if (finish) evaluator.finish()
  return { evaluator, taken, result: evaluator.result() }
}

describe('the machine of a curve', () => {
  it('takes samples up to the end of the loading, and no more', () => {
    const { evaluator, taken, result } = evaluated(loading(), { finish: false })
    // Half a second after the break, by the settings; the fall is seen with the next sample.
    expect([taken, evaluator.over(), evaluator.loading()]).toEqual([1251, true, true])
    expect(result).toMatchObject({ outcome: 'break', peakN: 5000, samples: 1251, missingSamples: 0 })
    expect(evaluator.take(loading().timeS, loading().force, loading().force, 1251, 1300)).toBe(1251)
    evaluator.finish()
    expect(evaluator.result()).toEqual(result)
  })

  it('tells what it knows at rest and under load', () => {
    const curve = loading()
    const evaluator = createCurveEvaluator(detectionSettings.parse({ startThresholdN: 20 }))
    evaluator.take(curve.timeS, curve.force, curve.force, 0, 200)
    expect([evaluator.loading(), evaluator.runningPeak(), evaluator.threshold()]).toEqual([false, null, 20])
    expect(Math.abs(evaluator.zero() - 0.5)).toBeLessThanOrEqual(0.5)
    evaluator.take(curve.timeS, curve.force, curve.force, 200, 701)
    expect([evaluator.loading(), evaluator.runningPeak(), evaluator.over()]).toEqual([true, 2500, false])
  })

  it('comes to the same however the stream is cut', () => {
    const curve = loading({ without: (t) => t > 5 && t < 5.2 })
    curve.force[400] = 9000
    const whole = evaluated(curve)
    for (const longest of [1, 9, 100]) expect(evaluated(curve, { longest }).result).toEqual(whole.result)
    expect(whole.result).toMatchObject({ missingSamples: 19, flags: ['gap', 'glitch'] })
  })

  it('evaluates a curve whose interval is not known when its start of loading', () => {
    const timeS = Float64Array.of(0, 1, 2, 3, 4, 5)
    const { result } = evaluated({ timeS, force: Float64Array.of(0, 400, 800, 1200, 10, 10) })
    expect(result).toMatchObject({ samples: 6, sampleRateHz: 1 })
  })
})

describe('what a curve lists', () => {
  it('are a hundred gaps at most', () => {
    // Every tenth of a second one that lasts 0.03 s.
    const curve = loading({ without: (t) => Math.round(t * 100) % 10 === 5 || Math.round(t * 100) % 10 === 6 })
    const { events, flags } = evaluated(curve).result
    const gaps = events.filter(({ kind }) => kind === 'gap')
    expect(flags).toContain('gap')
    expect(gaps.length).toBe(100)
    expect(gaps[0]!.startTimeS).toBeCloseTo(0.04, 9)
    expect(gaps[0]!.endTimeS).toBeCloseTo(0.07, 9)
  })

  it.each([99, 100, 101, 110])('are the first hundred of %i glitches', (count) => {
    const curve = loading()
    for (let k = 0; k < count; k++) curve.force[220 + 8 * k] = 20_000
    const { result } = evaluated(curve)
    const glitches = result.events.filter(({ kind }) => kind === 'glitch')
    expect(glitches.length).toBe(Math.min(count, 100))
    expect(glitches.map(({ startTimeS }) => startTimeS)).toEqual(glitches.map((_, k) => curve.timeS[220 + 8 * k]!))
    expect(result).toMatchObject({ peakN: 5000, flags: ['glitch'] })
  })

  it('are no flickers of a converter whose steps were not known yet, however many', () => {
    // At rest one reading alone for a second, with lone flickers of a step of 16 N; then they come often enough to be known.
    const curve = loading()
    curve.force.forEach((_, i) => {
      const t = curve.timeS[i]!
      const flicker = t < 1 ? i === 50 : t < 2 && i % 3 === 0
      curve.force[i] = (t <= 2 ? 0 : 16 * Math.round(curve.force[i]! / 16)) + (flicker ? 16 : 0)
    })
    const { result } = evaluated(curve, { settings: { startThresholdN: 60 } })
    expect(result).toMatchObject({ outcome: 'break', flags: [] })
    curve.force[30] = 400
    expect(evaluated(curve, { settings: { startThresholdN: 60 } }).result.flags).toEqual(['glitch'])
  })
})
