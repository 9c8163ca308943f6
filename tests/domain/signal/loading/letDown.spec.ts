import { describe, expect, it } from 'vitest'
import { createLetDownWatch } from '#domain/signal/loading/letDown.ts'

const settings = { endShare: 0.05, endHoldS: 1 }

/** When a loading of 1000 N, its peak at 0 s, is over that goes on at these loads, looked at every 0.1 s; null: never. */
function overS(load: (timeS: number) => number, { peakLoad = 1000, threshold = 20, lengthS = 2000 } = {}) {
  const watch = createLetDownWatch(settings, threshold)
  for (let i = 0; i <= lengthS * 10; i++) if (watch.isOver(i / 10, load(i / 10), peakLoad, i / 10)) return i / 10
  return null
}

describe('a load that is let down', () => {
  // The settings say the rule: below endShare of the peak (50 N), or the threshold where that is more, for endHoldS.
  it.each([
    [49.9, 20, 1],
    [50, 20, 30],
    [59.9, 60, 1],
    [60, 60, 30],
  ])('to %s N with a threshold of %s N is over after %s s', (load, threshold, expectedS) => {
    expect(overS(() => load, { threshold })).toBeCloseTo(expectedS, 9)
  })

  it('is not over while it comes up again within the hold', () => {
    expect(overS((t) => (t % 0.8 < 0.5 ? 10 : 60), { lengthS: 29 })).toBeNull()
  })

  it('begins its hold anew when the load has been near its peak', () => {
    const watch = createLetDownWatch(settings, 20)
    expect(watch.isOver(0, 10, 1000, 0)).toBe(false)
    watch.near()
    expect(watch.isOver(1, 10, 1000, 1)).toBe(false)
    expect(watch.isOver(2, 10, 1000, 2)).toBe(true)
  })
})

describe('a load that is left hanging', () => {
  // Loads in the trade go up within 5 to 60 s: half a minute far below the peak is longer than a pause of the pump.
  it('below a quarter of its peak is over after half a minute, above it not before half an hour', () => {
    expect(overS(() => 249.9)).toBeCloseTo(30, 9)
    expect(overS(() => 250)).toBeCloseTo(1800, 9)
  })

  it('that never came to three thresholds is over after a minute, one that did is not', () => {
    expect(overS(() => 50, { peakLoad: 59.9, lengthS: 100 })).toBeCloseTo(60, 9)
    expect(overS(() => 50, { peakLoad: 60, lengthS: 100 })).toBeNull()
  })
})

describe('a load at another time', () => {
  it('is left hanging for half a minute since it came down, not since the stream began', () => {
    const watch = createLetDownWatch(settings, 20)
    const over = [100, 101, 129.9, 130].map((timeS) => watch.isOver(timeS, 200, 1000, timeS - 99))
    expect(over).toEqual([false, false, false, true])
  })
})
