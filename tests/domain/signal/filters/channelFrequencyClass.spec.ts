import { describe, expect, test } from 'vitest'
import {
  channelFrequencyClass,
  halfPowerOfClassHz,
  isFastEnough,
} from '#domain/signal/filters/channelFrequencyClass.ts'
import { filterTwoPass } from '#domain/signal/filters/twoPass.ts'
import { twoPassGainDb } from './twoPassGain.ts'

describe('channelFrequencyClass', () => {
  // The algorithm printed in SAE J211-1 and ISO 6487. scipy 1.17.1: '%.10g' of butter(2, 2.0775 * CFC, fs=1/T)
  test.each([
    [60, 1e-4, 0.001452367474, 0.002904734947, 1.889343224, -0.8951526941],
    [180, 1e-4, 0.0117962711, 0.0235925422, 1.670117463, -0.7173025477],
    [600, 1e-4, 0.09718462528, 0.1943692506, 0.9455740091, -0.3343125102],
    [1000, 1e-4, 0.2192314172, 0.4384628344, 0.311896545, -0.1888222139],
    [1000, 8e-5, 0.1543637452, 0.3087274903, 0.6237532837, -0.2412082643],
    [60, 1e-3, 0.09718462528, 0.1943692506, 0.9455740091, -0.3343125102],
  ])('CFC %d at %d s has the coefficients of the table', (frequencyClass, intervalS, a0, a1, b1, b2) => {
    const made = channelFrequencyClass(frequencyClass, intervalS)
    // Half a unit of the tenth digit that is printed.
    for (const [value, printed] of [
      [made.a0, a0],
      [made.a1, a1],
      [made.a2, a0],
      [made.b1, b1],
      [made.b2, b2],
    ] as const)
      expect(Math.abs(value - printed)).toBeLessThanOrEqual(
        0.51 * 10 ** (Math.floor(Math.log10(Math.abs(printed))) - 9),
      )
  })

  // SAE J211-1 and ISO 6487 from memory: F_N = 5/3 F_H, 100, 300, 1000 and 1650 Hz as printed, the last rounded.
  test('halves the power at five thirds of the class', () => {
    expect([60, 180, 600].map(halfPowerOfClassHz)).toEqual([100, 300, 1000])
    expect(Math.abs(halfPowerOfClassHz(1000) / 1650 - 1)).toBeLessThan(0.011)
  })

  test.each([60, 180, 600, 1000])('CFC %d lets a constant pass unchanged', (frequencyClass) => {
    const { a0, a1, a2, b1, b2 } = channelFrequencyClass(frequencyClass, 1e-5)
    expect((a0 + a1 + a2) / (1 - b1 - b2)).toBeCloseTo(1, 9)
  })

  // Half-power points as the standard lists them: 100, 300, 1000 and 1650 Hz. The class of 1000 is nominally 1667 Hz.
  test.each([
    [60, 100, 0.02],
    [180, 300, 0.02],
    [600, 1000, 0.02],
    [1000, 1650, 0.12],
  ])('CFC %d is 3 dB down at %d Hz after both passes', (frequencyClass, halfPowerHz, within) => {
    const gainDb = twoPassGainDb(channelFrequencyClass(frequencyClass, 1e-5), halfPowerHz, 1e5)
    expect(Math.abs(gainDb + 3.01)).toBeLessThan(within)
  })

  // scipy 1.17.1: b, a = butter(2, 2.0775 * 60, fs=1e4); w, h = freqz(b, a, worN=[60, 100, 200], fs=1e4); 40 * log10(abs(h))
  test.each([
    [60, -0.45350357],
    [100, -3.00848382],
    [200, -17.67199507],
  ])('CFC 60 at 10 kHz has the gain of scipy at %d Hz', (frequencyHz, gainDb) => {
    expect(twoPassGainDb(channelFrequencyClass(60, 1e-4), frequencyHz, 1e4)).toBeCloseTo(gainDb, 4)
  })

  // scipy 1.17.1: the same with butter(2, 2.0775 * 1000, fs=1e4), at 1650 Hz: the transform bends the response there.
  test('CFC 1000 at its lowest rate is less than 3 dB down at 1650 Hz', () => {
    expect(twoPassGainDb(channelFrequencyClass(1000, 1e-4), 1650, 1e4)).toBeCloseTo(-2.34542005, 4)
  })

  test('refuses a sample rate below ten times the class, and what is no class', () => {
    expect(() => channelFrequencyClass(60, 1 / 590)).toThrow(
      new RangeError('channelFrequencyClass requires 600 samples a second'),
    )
    expect(() => channelFrequencyClass(60, 1 / 599)).not.toThrow()
    expect(() => channelFrequencyClass(1000, 1 / 9000)).toThrow(RangeError)
    for (const bad of [0, -0.5, -60, Number.NaN])
      expect(() => channelFrequencyClass(bad, 1e-4)).toThrow(/values above 0/)
    for (const bad of [0, -0.5]) expect(() => channelFrequencyClass(60, bad)).toThrow(/values above 0/)
    expect(() => channelFrequencyClass(0.5, 1e-4)).not.toThrow()
  })

  test('lets a clock pass that is slow by one in a hundred and no more', () => {
    // Exactly 1010 and 1020 for 1000 samples a second.
    expect(isFastEnough(101, 0.001)).toBe(true)
    expect(isFastEnough(102, 0.001)).toBe(false)
  })
})

// scipy 1.17.1: i = arange(20000); y = where(i <= 15000, i / 3, 50); f = filtfilt(*butter(2, 2.0775 * CFC, fs=1e4), y,
// padlen=400); f.max(), f.argmax(), f[15000]
test.each([
  [60, 5152.353978338981, 14_958, 2591.964908798716],
  [180, 5163.11240106667, 14_986, 2728.6155490956658],
  [600, 5185.286464672612, 14_996, 3177.2833793890845],
])('CFC %d falsifies the peak of a ramp and drop, so it is never for the peak', (frequencyClass, most, at, atPeak) => {
  const ramp = Float64Array.from({ length: 20_000 }, (_, i) => (i <= 15_000 ? i / 3 : 50))
  const filtered = filterTwoPass(ramp, channelFrequencyClass(frequencyClass, 1e-4), 400)
  const highest = filtered.reduce((high, value) => Math.max(high, value))
  expect(ramp[15_000]).toBe(5000)
  expect(highest).toBeCloseTo(most, 6)
  expect(filtered.indexOf(highest)).toBe(at)
  expect(filtered[15_000]).toBeCloseTo(atPeak, 6)
})
