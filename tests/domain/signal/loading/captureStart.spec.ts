import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { longestPreTriggerS, sinceOrigin, startCapture } from '#domain/signal/loading/captureStart.ts'
import { createLoadWatch } from '#domain/signal/rest/loadWatch.ts'
import { createSampleHistory } from '#domain/signal/stream/sampleHistory.ts'

describe('times since the origin of a capture', () => {
  it('are whole microseconds, at the same places', () => {
    const relativeS = new Float64Array(4).fill(-1)
    sinceOrigin(1000.000001, Float64Array.of(0, 1000.0000014, 1000.2500018, 1002), 1, 3, relativeS)
    expect([...relativeS]).toEqual([-1, 0, 0.250001, -1])
  })
})

describe('the samples that a capture begins with', () => {
  type Given = { rateHz: number; onsetS: number; threshold?: number; settings?: object; fromS?: number }
  /** Starts a capture of a load that was noticed at the end of a curve. */
  function started(load: (timeS: number) => number, lengthS: number, given: Given) {
    const { rateHz, onsetS, threshold = 20, settings = {}, fromS = 100 } = given
    const parsed = detectionSettings.parse(settings)
    const history = createSampleHistory(3, longestPreTriggerS(parsed), 24)
    const timeS = Float64Array.from({ length: Math.round(lengthS * rateHz) + 1 }, (_, i) => fromS + i / rateHz)
    const force = timeS.map((t) => load(t - fromS))
    history.append([timeS, force, force], 0, timeS.length)
    const watch = { ...createLoadWatch(parsed), threshold: () => threshold, onsetS: () => fromS + onsetS }
    const { start, evaluator } = startCapture(history, watch, parsed)
    return { ...start, firstTimeS: start.firstTimeS - fromS, evaluator, parsed }
  }
  const ramp =
    (fromS: number, slope = 400) =>
    (t: number) =>
      Math.max(0, slope * (t - fromS))

  it('may reach back by ten seconds and the time before the onset', () => {
    expect(longestPreTriggerS({ preTriggerS: 1 })).toBe(11)
  })

  it('are those from preTriggerS before the onset on', () => {
    const { samples, firstTimeS, evaluator } = started(ramp(5), 5.5, { rateHz: 64, onsetS: 5 })
    expect([samples, firstTimeS]).toEqual([1.5 * 64 + 1, 4])
    expect([evaluator.loading(), evaluator.over()]).toEqual([true, false])
    evaluator.finish()
    expect(evaluator.result().samples).toBe(1.5 * 64 + 1)
    expect(started(ramp(5), 5.5, { rateHz: 64, onsetS: 5, settings: { preTriggerS: 2 } }).firstTimeS).toBe(3)
  })

  it('are 24 before the onset at least, where there are so many', () => {
    expect(started(ramp(5), 6, { rateHz: 8, onsetS: 5 })).toMatchObject({ samples: 24 + 9, firstTimeS: 2 })
    expect(started(ramp(1), 2, { rateHz: 8, onsetS: 1 })).toMatchObject({ samples: 17, firstTimeS: 0 })
  })

  it('are recorded with the threshold in force', () => {
    const asked = { rateHz: 64, onsetS: 5 }
    expect(started(ramp(5), 5.5, { ...asked, threshold: 0.5 }).settings.startThresholdN).toBe(0.5)
    const { settings, parsed } = started(ramp(5), 5.5, { ...asked, threshold: 0 })
    expect(settings).toEqual(parsed)
  })

  it('begin after what looked like a loading before it and has ended', () => {
    // 500 N and a break at 2 s: over after half a second and the sample that showed it.
    const twice = (t: number) => (t <= 2 ? ramp(1, 500)(t) : ramp(6)(t))
    const asked = { rateHz: 64, settings: { preTriggerS: 6 } }
    const { samples, firstTimeS, evaluator } = started(twice, 7, { ...asked, onsetS: 6 })
    expect(firstTimeS).toBeCloseTo(2.5 + 1 / 64, 9)
    expect(samples).toBe(Math.round((7 - firstTimeS) * 64) + 1)
    expect([evaluator.loading(), evaluator.over()]).toEqual([true, false])
    evaluator.finish()
    expect(evaluator.result()).toMatchObject({ outcome: 'unloading', samples })
    expect(evaluator.result().onsetTimeS! + firstTimeS).toBeCloseTo(6, 1)
  })

  it('are all of a loading that ends with the newest of them', () => {
    const once = (t: number) => (t <= 2 ? ramp(1, 500)(t) : 0)
    const { samples, evaluator } = started(once, 2.5, { rateHz: 64, onsetS: 1 })
    expect([samples, evaluator.over()]).toEqual([2.5 * 64 + 1, true])
    expect(evaluator.result()).toMatchObject({ outcome: 'break', peakN: 500 })
  })
})
