import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { createLoadWatch } from '#domain/signal/rest/loadWatch.ts'

const rest = { atRest: true, level: 0, noise: 1 }

/** When loading is noticed in a noisy force sampled at 100 Hz; null: never. */
function startS(
  settings: Parameters<typeof detectionSettings.parse>[0],
  lengthS: number,
  force: (timeS: number) => number,
) {
  const random = createRandom(12)
  const watch = createLoadWatch(detectionSettings.parse(settings))
  watch.begin(rest, 0)
  for (let i = 0; i < lengthS * 100; i++)
    if (watch.push(i / 100, force(i / 100) + random.normal())) return { atS: i / 100, watch }
  return { atS: null, watch }
}

describe('the start of a loading', () => {
  it('is noticed when the force has stayed above the threshold for the hold', () => {
    const { atS, watch } = startS({ startThresholdN: 50 }, 20, (t) => Math.max(0, 100 * (t - 5)))
    // 50 N are passed at 5.5 s, the hold is 0.05 s.
    expect(atS).toBeGreaterThanOrEqual(5.53)
    expect(atS).toBeLessThan(5.62)
    expect(watch.onsetS()).toBeGreaterThan(4.95)
    expect(watch.onsetS()).toBeLessThan(5.1)
    expect(watch.noise()).toBeGreaterThan(0.7)
  })

  it('takes the larger of noise and share of capacity for threshold', () => {
    expect(startS({ capacityN: 25_000 }, 5, () => 0).watch.threshold()).toBe(50)
    const byNoise = startS({ capacityN: 100 }, 30, () => 0).watch.threshold()
    expect(byNoise).toBeGreaterThan(5 * 0.7)
    expect(byNoise).toBeLessThan(5 * 1.3)
  })

  it('is looked for with a threshold that comes right although the first guess of the noise was far too low', () => {
    let low = 0
    for (let seed = 1; seed <= 200; seed++) {
      const random = createRandom(seed)
      const watch = createLoadWatch(detectionSettings.parse({}))
      watch.begin({ ...rest, noise: 0.15 }, 0)
      for (let i = 0; i < 3000; i++) watch.push(i / 100, random.normal())
      if (watch.threshold() < 3.5) low += 1
    }
    expect(low).toBe(0)
  })

  it('is not a spike of 40 ms, nor what dies away within the hold', () => {
    expect(startS({ startThresholdN: 50 }, 10, (t) => (t > 5 && t < 5.04 ? 300 : 0)).atS).toBeNull()
    expect(startS({ startThresholdN: 10 }, 10, (t) => (t > 5 ? 300 * Math.exp(-(t - 5) / 0.03) : 0)).atS).toBeNull()
  })

  it('is not a flicker of the last digit of a coarse and silent converter', () => {
    const watch = createLoadWatch(detectionSettings.parse({}))
    watch.begin({ ...rest, noise: 0 }, 0)
    let started = false
    for (let i = 0; i < 2000; i++) started ||= watch.push(i / 80, i > 700 && i < 1200 ? 10 : 0)
    expect(started).toBe(false)
  })
})
