import { expect, it } from 'vitest'
import { createFrameGatherer, type FrameGatherer } from '#acquisition/frameGatherer.ts'

const takeOne = (frames: FrameGatherer, timeS: number, force: number) =>
  frames.add(Float64Array.of(timeS), Float64Array.of(force), 0, 1)

it('gives a frame when a thirtieth of a second has passed and something came', () => {
  const frames = createFrameGatherer()
  expect(frames.take(0, 'N', null)).toBeNull()
  takeOne(frames, 0, 1)
  expect(frames.take(0, 'N', null)).toMatchObject({ latest: 1, peak: null, unit: 'N' })
  takeOne(frames, 0.01, 2)
  expect(frames.take(0.03, 'N', null)).toBeNull()
  takeOne(frames, 0.03, 3)
  expect(frames.take(0.034, 'N', 3)?.force).toEqual(Float64Array.from([2, 3]))
})

it('keeps highest and lowest of a thousand samples in few points, with times that rise', () => {
  const frames = createFrameGatherer()
  for (let i = 0; i < 1000; i++) takeOne(frames, i, i === 333 ? 9999 : i === 666 ? -9999 : Math.sin(i))
  const frame = frames.take(1, 'counts', null)!
  expect(frame.force.length).toBeLessThanOrEqual(64)
  expect(Math.max(...frame.force)).toBe(9999)
  expect(Math.min(...frame.force)).toBe(-9999)
  for (let i = 1; i < frame.timeS.length; i++) expect(frame.timeS[i]!).toBeGreaterThan(frame.timeS[i - 1]!)
  expect(frame.timeS.buffer.byteLength).toBe(frame.timeS.length * 8)
})

it('forgets what was gathered when cleared', () => {
  const frames = createFrameGatherer()
  takeOne(frames, 0, 1)
  frames.clear()
  expect(frames.take(5, 'N', null)).toBeNull()
})

it('takes samples of a block, however many they are', () => {
  const frames = createFrameGatherer()
  takeOne(frames, -1, -1)
  const timeS = Float64Array.from({ length: 5000 }, (_, i) => i)
  frames.add(timeS, timeS, 0, 3)
  expect(frames.take(1, 'N', null)?.force).toEqual(Float64Array.from([-1, 0, 1, 2]))
  frames.add(timeS, timeS, 0, 5000)
  expect(frames.take(2, 'N', null)).toMatchObject({ latest: 4999 })
})

it('tells what of it can be load, and shows a lone glitch all the same', () => {
  const frames = createFrameGatherer()
  frames.noise(1)
  const forces = [1, 2, 73_000, 2, 1, -73_000]
  for (const [i, force] of forces.entries()) takeOne(frames, i / 80, force)
  const frame = frames.take(1, 'N', null)!
  expect([frame.loadRange, frame.latest]).toEqual([[1, 2], 1])
  expect(frame.force).toEqual(Float64Array.from(forces))
})

it('has no range where nothing can be load, and none of before it was cleared', () => {
  const frames = createFrameGatherer()
  frames.noise(1)
  for (let i = 0; i < 4; i++) takeOne(frames, i, 5)
  frames.take(1, 'N', null)
  takeOne(frames, 4, 73_000)
  expect(frames.take(2, 'N', null)).toMatchObject({ loadRange: null, latest: 5 })
  takeOne(frames, 5, 7)
  frames.clear()
  takeOne(frames, 6, 73_000)
  takeOne(frames, 7, 6)
  expect(frames.take(3, 'N', null)).toMatchObject({ loadRange: [6, 6], latest: 6 })
})

it('judges by no noise where none is known', () => {
  const frames = createFrameGatherer()
  frames.noise(100)
  frames.noise(null)
  for (const [i, force] of [1, 1, 1, 40, 1, 1].entries()) takeOne(frames, i, force)
  expect(frames.take(1, 'N', null)?.loadRange).toEqual([1, 1])
})
