import { expect, it } from 'vitest'
import { type BlockWriter, createBlockWriter } from '#acquisition/blockWriter.ts'
import type { SampleBlock } from '#contract/breaks/curve.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'
import { cutStream } from '#tests/fakes/streams/cutStream.ts'

const add = (writer: BlockWriter, timeUs: number, reading: number) =>
  writer.add(Float64Array.of(timeUs), 0, Float64Array.of(reading), 0, 1)

it('hands on a block a fortieth of a second after its first sample, also when no more come', async () => {
  const clock = movedClock()
  const blocks: SampleBlock[] = []
  const writer = createBlockWriter(clock, (block) => blocks.push(block))
  add(writer, 0, 5)
  await clock.move(0.0125)
  add(writer, 12_500, 6)
  expect(blocks).toEqual([])
  await clock.move(0.0125)
  expect(blocks).toEqual([{ timeUs: Float64Array.from([0, 12_500]), readings: Float64Array.from([5, 6]) }])
  await clock.move(1)
  expect(blocks.length).toBe(1)
})

it('loses no sample and gives each block its own memory, however fast they come', () => {
  const blocks: SampleBlock[] = []
  const writer = createBlockWriter(movedClock(), (block) => blocks.push(block))
  const count = Float64Array.from({ length: 40_000 }, (_, i) => i)
  for (const [from, to] of cutStream(createRandom(6), 40_000, 30_000))
    writer.add(
      count,
      0,
      count.map((i) => -i),
      from,
      to,
    )
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
