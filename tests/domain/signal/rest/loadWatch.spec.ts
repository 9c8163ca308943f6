import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { createLoadWatch } from '#domain/signal/rest/loadWatch.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

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

describe('the limits of the start of a loading', () => {
  type Given = { settings?: Parameters<typeof detectionSettings.parse>[0]; rateHz?: number; noise?: number }
  /** Watches forces from a rest at 0 N on, of so much noise as the head has told. */
  function watching(forces: readonly number[], { settings = {}, rateHz = 1000, noise = 1 }: Given = {}) {
    const watch = createLoadWatch(detectionSettings.parse(settings))
    watch.begin({ ...rest, noise }, 0)
    const startedAt = forces.findIndex((force, i) => watch.push(i / rateHz, force))
    return { watch, startedAt }
  }
  const still = (count: number) => Array<number>(count).fill(0)

  it('are five noise SDs, or half as many steps of the converter', () => {
    expect(watching(still(5), { noise: 3 }).watch.threshold()).toBe(15)
    expect(watching([0, 8, 0, 8], { noise: 3 }).watch.threshold()).toBe(20)
    expect(watching([0, 8, 0, 8], { noise: 3 }).watch.sigma()).toBe(4)
    expect(watching(still(5), { settings: { startNoiseMultiple: 7 }, noise: 3 }).watch.threshold()).toBe(21)
    expect(watching(still(5), { settings: { capacityN: 10_000 }, noise: 3 }).watch.threshold()).toBe(20)
    expect(watching(still(5), { noise: 0.1 }).watch.threshold()).toBe(0.5)
  })

  it('call a signal noisy whose noise SD is a step of the converter or more', () => {
    const isNoisy = (noise: number, forces: readonly number[] = [0, 8, 0, 8]) =>
      watching(forces, { noise }).watch.isNoisy()
    expect([7.99, 8, 20].map((noise) => isNoisy(noise))).toEqual([false, true, true])
    expect(isNoisy(20, still(5))).toBe(false)
    expect(isNoisy(1, [0, 0.5, 0, 0.5])).toBe(true)
    expect(createLoadWatch(detectionSettings.parse({})).isNoisy()).toBe(false)
  })

  it('are the hold in time and four samples', () => {
    const startThresholdN = 50
    const after = (rateHz: number, startHoldS: number) =>
      watching([...still(5), ...Array<number>(400).fill(60)], { settings: { startThresholdN, startHoldS }, rateHz })
        .startedAt - 5
    expect(after(1000, 0.05)).toBe(50)
    expect(after(1000, 0.001)).toBe(3)
    expect(after(10, 0.05)).toBe(3)
    expect(after(10, 0.5)).toBe(5)
    // From the first sample on, too.
    expect(watching(Array<number>(9).fill(60), { settings: { startThresholdN, startHoldS: 0.001 } }).startedAt).toBe(3)
    // The threshold itself is not above it.
    expect(watching([...still(5), ...Array<number>(400).fill(50)], { settings: { startThresholdN } }).startedAt).toBe(
      -1,
    )
  })

  it('are six tenths of the highest since the threshold was crossed', () => {
    const keeps = (share: number, levelN = 0) => {
      const watch = createLoadWatch(detectionSettings.parse({ startThresholdN: 50 }))
      watch.begin({ ...rest, level: levelN }, 0)
      return [...still(5), 1000, ...Array<number>(200).fill(1000 * share)].some((above, i) =>
        watch.push(i / 1000, levelN + above),
      )
    }
    expect(limitOf(keeps, 0.2, 0.9)).toBeCloseTo(0.6, 4)
    expect(limitOf((share) => keeps(share, 500), 0.2, 0.9)).toBeCloseTo(0.6, 4)
    expect(keeps(0.6)).toBe(true)
    const { watch } = watching([...still(5), 100, 300, 200, ...Array<number>(60).fill(250), 300], {
      settings: { startThresholdN: 50 },
    })
    expect([watch.highest(), watch.highestS()]).toEqual([300, 0.006])
  })

  it('are one sample below the threshold, which begins the hold anew, and a step of more than a second', () => {
    const startThresholdN = 50
    const broken = [...still(5), ...Array<number>(30).fill(60), 40, ...Array<number>(80).fill(60)]
    const settings = { startThresholdN, startHoldS: 1 / 16 }
    expect(watching(broken, { settings, rateHz: 1024 }).startedAt).toBe(36 + 64)
    const startedAt = (times: readonly number[]) => {
      const watch = createLoadWatch(detectionSettings.parse({ startThresholdN }))
      watch.begin(rest, 0)
      return times.findIndex((timeS) => watch.push(timeS, 60))
    }
    expect([1.3, 1.301].map((timeS) => startedAt([0.1, 0.2, 0.3, timeS]))).toEqual([3, -1])
    // Of what came before the step nothing counts, however far the hold had come; nor does a step before it do harm.
    for (const before of [[0.1], [0.1, 0.2], [0.1, 0.2, 0.3]])
      expect(startedAt([...before, 5, 5.1, 5.2, 5.3, 5.4])).toBeGreaterThanOrEqual(before.length + 3)
    expect(startedAt([5, 5.1, 5.2, 5.3, 5.4])).toBe(3)
  })

  it('spoil the noise from two thresholds on, and leave it below', () => {
    // A block of rest is being filled when a short bump comes: dropped, it begins anew after it.
    // The level comes down from 10 N when the block is full.
    const blockEnds = (bumpN: number) => {
      const watch = createLoadWatch(detectionSettings.parse({ startThresholdN: 50 }))
      watch.begin({ ...rest, level: 10 }, 0)
      for (const [i, force] of [...still(150), bumpN, ...still(60)].entries()) watch.push(i / 1000, force)
      return watch.level() < 10
    }
    expect(limitOf(blockEnds, 70, 200)).toBeCloseTo(10 + 100, 3)
    expect([110, 110.001].map(blockEnds)).toEqual([true, false])
  })

  it('find the onset after the last sample whose running mean of 20 ms is within two of its SDs of rest', () => {
    // At 1000 Hz a sample weighs 1/20: the mean of white noise has SD sqrt(0.05 / 1.95) = 0.16, so a whole SD counts. A step of f
    // for n samples brings the mean to f (1 - 0.95^n).
    // A last digit that is far below the noise, so that no step of the force is taken for the resolution.
    // Too few for a block of noise of their own.
    const flickering = Array.from({ length: 10 }, (_, i) => 1e-6 * (i % 2))
    const restful = (forceN: number, samples: number, rateHz = 1000) =>
      watching([...flickering, ...Array<number>(samples).fill(forceN)], {
        settings: { startThresholdN: 500 },
        rateHz,
      }).watch.restful()
    expect(limitOf((forceN) => restful(forceN, 10), 0.5, 20)).toBeCloseTo(1 / (1 - 0.95 ** 10), 3)
    // At 80 Hz a sample weighs 0.625: two SDs of the mean are 2 sqrt(0.625 / 1.375) = 1.348.
    expect(limitOf((forceN) => restful(forceN, 1, 80), 0.5, 20)).toBeCloseTo((2 * Math.sqrt(0.625 / 1.375)) / 0.625, 3)
    expect(watching(still(5), { noise: 0 }).watch.restful()).toBe(true)
    // At 40 Hz it is its own mean.
    expect(limitOf((forceN) => restful(forceN, 1, 40), 0.5, 20)).toBeCloseTo(2, 3)
    const { watch } = watching([...still(30), ...Array.from({ length: 100 }, (_, i) => 2 * i)], {
      settings: { startThresholdN: 50 },
    })
    // The mean of a ramp of 2 N a sample passes 1 N with its fifth: 0.05 (2 + 2 · 1.95 + ...) and so on.
    expect(watch.onsetS()).toBeGreaterThan(0.032)
    expect(watch.onsetS()).toBeLessThan(0.038)
  })

  it('let the level rise by one threshold in a minute', () => {
    const watch = createLoadWatch(detectionSettings.parse({ startThresholdN: 60 }))
    watch.begin(rest, 0)
    for (let i = 0; i <= 100 * 20; i++) watch.push(i / 100, 30)
    // 1 N a second, in blocks of 0.2 s.
    expect(watch.level()).toBeGreaterThan(18)
    expect(watch.level()).toBeLessThanOrEqual(20)
  })

  it('say nothing of the noise of a head that was not at rest, until rest is seen', () => {
    const watch = createLoadWatch(detectionSettings.parse({ startThresholdN: 50 }))
    watch.begin({ atRest: false, level: 0, noise: 2 }, 0)
    expect(watch.noise()).toBeNull()
    watch.push(0.01, 40)
    expect(watch.noise()).toBeNull()
    for (let i = 2; i < 30; i++) watch.push(i / 100, 0)
    expect(watch.noise()).not.toBeNull()
  })
})
