import { describe, expect, it } from 'vitest'
import { createDisturbances } from '#acquisition/virtual/disturbances.ts'

const silent = { seed: 1, noiseN: 0, humN: 0, driftN: 0, knocksPerHour: 0 }

describe('disturbances of the bench', () => {
  it('are nothing when nothing is asked for', () => {
    const bench = createDisturbances(silent)
    for (let i = 0; i < 1000; i++) expect(bench.at(i * 0.01) + bench.noise()).toBe(0)
  })

  it('hum at 50 Hz with the amplitude asked for: gone when sampled at 50 Hz, its amplitude over root 2 as RMS otherwise', () => {
    const bench = createDisturbances({ ...silent, humN: 2 })
    const still = Array.from({ length: 50 }, (_, i) => bench.at(i / 50))
    for (const forceN of still) expect(forceN).toBeCloseTo(still[0]!, 9)
    let squares = 0
    for (let i = 0; i < 1000; i++) squares += bench.at(2 + i / 1000) ** 2
    expect(Math.sqrt(squares / 1000)).toBeCloseTo(2 / Math.SQRT2, 6)
  })

  it('drift slowly: by the SD asked for over many hours, hardly at all within a second', () => {
    const bench = createDisturbances({ ...silent, driftN: 3 })
    let squares = 0
    let quickest = 0
    let before = bench.at(0)
    const seconds = 3_000_000
    for (let s = 1; s <= seconds; s++) {
      const now = bench.at(s)
      squares += now * now
      quickest = Math.max(quickest, Math.abs(now - before))
      before = now
    }
    // Memory of 900 s: about 1,700 independent values, so the SD is good to 1.7 %; four of that.
    expect(Math.abs(Math.sqrt(squares / seconds) / 3 - 1)).toBeLessThan(0.07)
    expect(quickest).toBeLessThan(0.5)
  })

  it('knock as often as asked, swing to both sides and die away', () => {
    const bench = createDisturbances({ ...silent, knocksPerHour: 60 })
    let knocks = 0
    let calmSince = 0
    let lowest = 0
    let highest = 0
    const hours = 10
    for (let i = 0; i < hours * 3600 * 200; i++) {
      const forceN = bench.at(i / 200)
      lowest = Math.min(lowest, forceN)
      highest = Math.max(highest, forceN)
      if (Math.abs(forceN) > 0) {
        if (i - calmSince > 20) knocks += 1
        calmSince = i
      }
    }
    // Poisson with mean 600: four SDs are 98; a few fall into one another.
    expect(knocks).toBeGreaterThan(490)
    expect(knocks).toBeLessThan(700)
    expect(lowest).toBeLessThan(-50)
    expect(lowest).toBeGreaterThan(-200)
    expect(highest).toBeGreaterThan(50)
    expect(highest).toBeLessThan(200)
  })
})
