import { describe, expect, it } from 'vitest'
import { soakBreaks, soakIdle } from './detector.ts'

describe('a share of the detector soak', () => {
  it.each([
    ['80 Hz', { rateHz: 80, seed: 101 }, 4],
    ['80 Hz with unknown capacity', { rateHz: 80, seed: 102, settings: { capacityN: null } }, 4],
    ['10 Hz with unknown capacity', { rateHz: 10, seed: 103, settings: { capacityN: null } }, 24],
    ['1000 Hz', { rateHz: 1000, seed: 104 }, 0.5],
  ])('finds no break in idle, noisy, knocked hours at %s', (_label, bench, hours) => {
    const figures = soakIdle(hours, bench)
    expect(figures.samples).toBe(Math.round(hours * 3600 * bench.rateHz))
    expect(figures).toMatchObject({ phantomBreaks: 0, phantomUnloadings: 0 })
  })

  it('misses and invents none of 500 loadings', () => {
    const figures = soakBreaks(500, [10, 80, 320], 5000)
    expect(figures.loadings).toBeGreaterThanOrEqual(500)
    expect(figures).toMatchObject({ missed: 0, invented: 0, wrongOutcomes: 0, wrongPeaks: 0, examples: [] })
  })
})
