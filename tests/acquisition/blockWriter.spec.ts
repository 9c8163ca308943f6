import { expect, it } from 'vitest'
import { createBlockWriter } from '#acquisition/blockWriter.ts'
import type { SampleBlock } from '#contract/breaks/curve.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'

it('hands on a block a twentieth of a second after its first sample, also when no more come', async () => {
  const clock = movedClock()
  const blocks: SampleBlock[] = []
  const writer = createBlockWriter(clock, (block) => blocks.push(block))
  writer.push(0, 5)
  await clock.move(0.025)
  writer.push(25_000, 6)
  expect(blocks).toEqual([])
  await clock.move(0.025)
  expect(blocks).toEqual([{ timeUs: Float64Array.from([0, 25_000]), readings: Float64Array.from([5, 6]) }])
  await clock.move(1)
  expect(blocks.length).toBe(1)
})

it('loses no sample and gives each block its own memory, however fast they come', () => {
  const blocks: SampleBlock[] = []
  const writer = createBlockWriter(movedClock(), (block) => blocks.push(block))
  for (let i = 0; i < 40_000; i++) writer.push(i, -i)
  writer.flush()
  writer.flush()
  const times = blocks.flatMap((block) => [...block.timeUs])
  expect(times).toEqual(Array.from({ length: 40_000 }, (_, i) => i))
  expect(blocks.length).toBe(3)
  expect(new Set(blocks.map((block) => block.timeUs.buffer)).size).toBe(3)
})

it('counts the times of a batch from the first sample of the capture', () => {
  const blocks: SampleBlock[] = []
  const writer = createBlockWriter(movedClock(), (block) => blocks.push(block))
  writer.add(Float64Array.from([900, 1000, 1100, 1200]), 1000, Float64Array.from([1, 2, 3, 4]), 1, 3)
  writer.flush()
  expect(blocks).toEqual([{ timeUs: Float64Array.from([0, 100]), readings: Float64Array.from([2, 3]) }])
})
