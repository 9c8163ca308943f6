import { expect, test } from 'vitest'
import { butterworth, highestCutoffHz, lowestCutoffHz } from '#domain/signal/filters/butterworth.ts'
import { twoPassGainDb } from './twoPassGain.ts'

// scipy 1.17.1: f1 = arctan(tan(pi * f / rate) / (sqrt(2) - 1)**0.25) * rate / pi; b, a = butter(2, f1, fs=rate)
test.each([
  [5, 80, 0.04353499429748831, 0.08706998859497662, 1.3292359378819343, -0.5033759150718876],
  [32, 80, 0.6960969406696265, 1.392193881339253, -1.2975998019027841, -0.4867879607757217],
  [100, 10_000, 0.001451863366251363, 0.002903726732502726, 1.8893629204881757, -0.8951703739531811],
])('one pass for %d Hz at %d samples a second is that of scipy.signal.butter', (cutoffHz, rateHz, a0, a1, b1, b2) => {
  const made = butterworth(cutoffHz, 1 / rateHz)
  expect(made.a0).toBeCloseTo(a0, 13)
  expect(made.a1).toBeCloseTo(a1, 13)
  expect(made.a2).toBeCloseTo(a0, 13)
  expect(made.b1).toBeCloseTo(b1, 13)
  expect(made.b2).toBeCloseTo(b2, 13)
})

// Half the power: 10 log10(1/2) dB, whatever the rate.
test.each([
  [5, 80],
  [0.2, 80],
  [28, 80],
  [100, 10_000],
  [1000, 5000],
])('%d Hz at %d samples a second is where both passes let half the power through', (cutoffHz, rateHz) => {
  const gainDb = twoPassGainDb(butterworth(cutoffHz, 1 / rateHz), cutoffHz, rateHz)
  expect(gainDb).toBeCloseTo(10 * Math.log10(0.5), 3)
})

// scipy 1.17.1: freqz of the filters above at twice the cutoff, 40 * log10(abs(h))
test.each([
  [5, 80, -18.87866034],
  [100, 10_000, -17.6773867],
])('an octave above %d Hz at %d samples a second the gain is that of scipy', (cutoffHz, rateHz, gainDb) => {
  expect(twoPassGainDb(butterworth(cutoffHz, 1 / rateHz), 2 * cutoffHz, rateHz)).toBeCloseTo(gainDb, 4)
})

test('a constant passes unchanged', () => {
  for (const cutoffHz of [0.01, 1, 30]) {
    const { a0, a1, a2, b1, b2 } = butterworth(cutoffHz, 1 / 80)
    expect((a0 + a1 + a2) / (1 - b1 - b2)).toBeCloseTo(1, 8)
  }
})

test('refuses a cutoff above 0.8 of half the sample rate, one that is next to nothing, and what is no number', () => {
  expect(highestCutoffHz(1 / 80)).toBeCloseTo(32, 12)
  expect(() => butterworth(32, 1 / 80)).not.toThrow()
  for (const cutoffHz of [32.1, 40, 1000, 0, -1, 1e-9, Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => butterworth(cutoffHz, 1 / 80)).toThrow(RangeError)
  for (const intervalS of [0, -0.5, -1]) expect(() => butterworth(1, intervalS)).toThrow(/sample interval above 0/)
  // A millionth of 80 a second.
  expect(lowestCutoffHz(1 / 80)).toBeCloseTo(8e-5, 12)
  expect(() => butterworth(lowestCutoffHz(1 / 80), 1 / 80)).not.toThrow()
})
