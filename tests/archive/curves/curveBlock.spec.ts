import { expect, test } from 'vitest'
import { decodeBlock, encodeBlock } from '#archive/curves/curveBlock.ts'
import type { SampleBlock } from '#contract/breaks/curve.ts'

// A small generator (Park and Miller 1988, multiplier 48271) so that every run sees the same samples.
function seeded(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
}

function roundTrip(timeUs: Float64Array<ArrayBuffer>, readings: Float64Array<ArrayBuffer>): SampleBlock {
  const decoded: SampleBlock = { timeUs: new Float64Array(timeUs.length), readings: new Float64Array(timeUs.length) }
  decodeBlock(encodeBlock({ timeUs, readings }), decoded.timeUs, decoded.readings)
  return decoded
}

test('codes the worked example of FORMAT.md', () => {
  const block = encodeBlock({
    timeUs: Float64Array.of(0, 12_500, 25_000, 37_501, 50_000),
    readings: Float64Array.of(-12, -9, 40, 38, 1000),
  })
  expect({
    ...block,
    times: Buffer.from(block.times).toString('hex'),
    readings: Buffer.from(block.readings).toString('hex'),
  }).toEqual({
    samples: 5,
    first_us: 0,
    last_us: 50_000,
    interval_us: 12_500,
    times: '02e0',
    reading_coding: 'decimal',
    decimals: 0,
    differences: 1,
    first_mantissa: -12,
    first_step: 0,
    readings: '0b0610c300080f',
    // Of `sha256sum` over the nine bytes.
    sha256: 'bea4a20d9af1cf826b49b41e176d998f7ca57e71850e25b1c7e69434a882167c',
  })
})

test.each([
  ['one sample', 1, () => 5],
  ['two samples', 2, (i: number) => i * 1000],
  ['counts with noise', 3000, (_: number, random: () => number) => Math.round(random() * 1e6 - 5e5)],
  ['a steep ramp', 3000, (i: number, random: () => number) => Math.round(i * 90_000 + random() * 50)],
  ['newtons with decimals', 3000, (_: number, random: () => number) => Math.round(random() * 1e6) / 1000],
  ['doubles of all sizes', 3000, (i: number, random: () => number) => (random() - 0.5) * 10 ** ((i % 600) - 300)],
  ['end codes', 200, (i: number) => (i % 2 === 0 ? -999_999_999_999_999 : 999_999_999_999_999)],
])('gives back %s without loss', (_name, samples, reading) => {
  const random = seeded(samples + 1)
  let time = 0
  const timeUs = Float64Array.from({ length: samples }, () => {
    time += 1 + Math.floor(random() * 30_000)
    return time
  })
  const readings = Float64Array.from({ length: samples }, (_, i) => reading(i, random))
  expect(roundTrip(timeUs, readings)).toEqual({ timeUs, readings })
})

test('gives back times with gaps of hours', () => {
  const timeUs = Float64Array.of(0, 1, 2, 36e9, 36e9 + 1, 2 ** 50)
  const readings = new Float64Array(6)
  expect(roundTrip(timeUs, readings)).toEqual({ timeUs, readings })
})

test('needs next to nothing for the times of an even clock, even when its interval is no whole microsecond', () => {
  const samples = 65_536
  const even = Float64Array.from({ length: samples }, (_, i) => i * 12_500)
  const fractional = Float64Array.from({ length: samples }, (_, i) => Math.round(i * 999.63))
  expect(encodeBlock({ timeUs: even, readings: even }).times.length / samples).toBeLessThan(0.02)
  expect(encodeBlock({ timeUs: fractional, readings: even }).times.length / samples).toBeLessThan(0.3)
})

test('needs at most 2.5 bytes a sample for a noisy 24-bit curve on an even clock', () => {
  const random = seeded(24)
  const samples = 65_536
  // Sum of twelve uniform numbers: standard deviation 1, near enough to normal.
  const normal = () => Array.from({ length: 12 }, random).reduce((sum, value) => sum + value, -6)
  const timeUs = Float64Array.from({ length: samples }, (_, i) => i * 1000)
  const readings = Float64Array.from({ length: samples }, (_, i) => Math.round(i * 120 + 100 * normal()))
  const block = encodeBlock({ timeUs, readings })
  expect((block.times.length + block.readings.length) / samples).toBeLessThan(2.5)
})

test('refuses a block with one byte changed, wherever it is', () => {
  const random = seeded(3)
  const timeUs = Float64Array.from({ length: 200 }, (_, i) => i * 1000 + Math.floor(random() * 9))
  const readings = Float64Array.from({ length: 200 }, () => Math.round(random() * 1000))
  const target = { timeUs: new Float64Array(200), readings: new Float64Array(200) }
  const whole = encodeBlock({ timeUs, readings })
  for (const name of ['times', 'readings'] as const)
    for (let at = 0; at < whole[name].length; at += 7) {
      const bytes = whole[name].slice()
      bytes[at]! ^= 1
      expect(() => decodeBlock({ ...whole, [name]: bytes }, target.timeUs, target.readings)).toThrow(/SHA-256/)
    }
  expect(() => decodeBlock({ ...whole, interval_us: 7 }, target.timeUs, target.readings)).toThrow(/last time/)
})

test('takes no coding that it does not know for one that it knows', () => {
  const curve = { timeUs: Float64Array.of(0, 1), readings: Float64Array.of(1, 2) }
  const block = { ...encodeBlock(curve), reading_coding: 'degimal' as 'decimal' }
  expect(() => decodeBlock(block, new Float64Array(2), new Float64Array(2))).toThrow(/coding/)
})
