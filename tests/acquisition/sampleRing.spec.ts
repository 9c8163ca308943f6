import { expect, it } from 'vitest'
import { createSampleRing } from '#acquisition/sampleRing.ts'

function kept(ring: ReturnType<typeof createSampleRing>, count = Number.POSITIVE_INFINITY): [number, number][] {
  const samples: [number, number][] = []
  ring.newest(count, (timeUs, reading) => samples.push([timeUs, reading]))
  return samples
}

it('keeps at least the span, in order, whatever the rate', () => {
  for (const stepUs of [200_000, 1000, 100]) {
    const ring = createSampleRing(1)
    for (let timeUs = 0; timeUs <= 5_000_000; timeUs += stepUs) ring.push(timeUs, timeUs / stepUs)
    const samples = kept(ring)
    expect(samples[0]).toEqual([4_000_000, 4_000_000 / stepUs])
    expect(samples.at(-1)).toEqual([5_000_000, 5_000_000 / stepUs])
    expect(samples.length).toBe(1_000_000 / stepUs + 1)
  }
})

it('gives the newest by number or by time', () => {
  const ring = createSampleRing(10)
  for (let i = 0; i < 10; i++) ring.push(i * 1e6, i)
  expect(kept(ring, 2)).toEqual([
    [8e6, 8],
    [9e6, 9],
  ])
  const recent: number[] = []
  ring.lastSeconds(2, (_timeUs, reading) => recent.push(reading))
  expect(recent).toEqual([7, 8, 9])
  ring.clear()
  expect(ring.length()).toBe(0)
  expect(kept(ring)).toEqual([])
})

it('forgets what lies before a silence longer than the span', () => {
  const ring = createSampleRing(1)
  ring.push(0, 1)
  ring.push(60e6, 2)
  expect(kept(ring)).toEqual([[60e6, 2]])
})

it('keeps the same of arrays as of samples one by one', () => {
  const timeUs = Float64Array.from({ length: 3000 }, (_, i) => 1000 * i)
  const reading = timeUs.map((us) => us / 7)
  const [single, joined] = [createSampleRing(1), createSampleRing(1)]
  timeUs.forEach((us, i) => {
    single.push(us, reading[i]!)
  })
  for (let from = 0; from < 3000; from += 300) joined.add(timeUs, reading, from, from + 300)
  expect(kept(joined)).toEqual(kept(single))
  expect(kept(joined).length).toBe(1001)
})
