import { describe, expect, it } from 'vitest'
import { createRandom } from '#acquisition/virtual/random.ts'
import { createDropTracker } from '#domain/signal/dropTracker.ts'

/** Runs a load given by time through a tracker at a rate. */
function track(rateHz: number, lengthS: number, load: (timeS: number) => number, noise = 1) {
  const random = createRandom(6)
  const tracker = createDropTracker({ zero: 0, noise, intervalS: 1 / rateHz })
  for (let i = 0; i < lengthS * rateHz; i++) tracker.push(i / rateHz, load(i / rateHz) + noise * random.normal())
  return { recovered: tracker.recovered(), suddenFall: tracker.suddenFall() }
}

/** 500 N/s, with sudden drops at times, each made good by the drive. */
const slipping = (drops: readonly [atS: number, dropN: number][]) => (t: number) =>
  500 * t - drops.reduce((sum, [atS, dropN]) => sum + (t >= atS ? dropN : 0), 0)

describe('drops and recoveries', () => {
  it.each([20, 80, 1000, 10_000])('one drop of 10 %% is found at %i Hz', (rateHz) => {
    const { recovered } = track(rateHz, 10, slipping([[4.001, 200]]))
    expect(recovered.count).toBe(1)
    expect(recovered.firstStartS).toBeCloseTo(4, 0)
    expect(Math.abs(recovered.largest - 200)).toBeLessThan(500 / rateHz + 15)
    expect(Math.abs(recovered.largestFrom - 2000)).toBeLessThan(500 / rateHz + 20)
  })

  it('each of five is counted', () => {
    const drops = [4, 5, 6, 7, 8].map((atS): [number, number] => [atS + 0.001, 250])
    expect(track(80, 10, slipping(drops)).recovered.count).toBe(5)
  })

  it('a knock that swings back is none', () => {
    const knock = (t: number) => (t > 5 ? -200 * Math.exp(-(t - 5) / 0.04) * Math.sin(2 * Math.PI * 30 * (t - 5)) : 0)
    expect(track(1000, 10, (t) => 300 * t + knock(t)).recovered.count).toBe(0)
  })

  it('relaxation between strokes of a pump is none', () => {
    // Up for half a second, then 4 % let go with a time constant of 0.2 s.
    const pumped = (t: number) => {
      const stroke = Math.floor(t)
      const u = t - stroke
      const top = 500 * (stroke + 1)
      return u < 0.5
        ? 500 * stroke * 0.96 + (top - 480 * stroke) * 2 * u
        : top * (0.96 + 0.04 * Math.exp(-(u - 0.5) / 0.2))
    }
    expect(track(80, 12, pumped).recovered.count).toBe(0)
  })

  it('noise is none, in a hundred thousand samples', () => {
    expect(track(1000, 100, () => 40).recovered.count).toBe(0)
  })
})

describe('sudden steps down', () => {
  it('add up, and an opened valve does not', () => {
    const steps = (t: number) => 1000 - [1, 1.5, 2].reduce((sum, atS) => sum + (t >= atS ? 200 : 0), 0)
    expect(Math.abs(track(200, 3, steps).suddenFall - 600)).toBeLessThan(30)
    expect(track(200, 3, (t) => 1000 * Math.exp(-t / 0.8)).suddenFall).toBe(0)
  })
})
