import { expect, it } from 'vitest'
import type { SampleBlock } from '#contract/breaks/curve.ts'
import { createWaitingBlocks } from '#engine/bench/capture/waitingBlocks.ts'

const block = (...timeUs: number[]): SampleBlock => ({
  timeUs: Float64Array.from(timeUs),
  readings: Float64Array.from(timeUs, (time) => time * 10),
})

it('stores what came while the disk was busy with one commit', async () => {
  const stored: number[][] = []
  let wakes = 0
  let free = () => {}
  const waiting = createWaitingBlocks(
    ({ timeUs, readings }) => {
      expect([...readings]).toEqual([...timeUs].map((time) => time * 10))
      stored.push([...timeUs])
      return new Promise((resolve) => {
        free = resolve
      })
    },
    () => {
      wakes += 1
    },
  )
  waiting.add(block(1, 2))
  const first = waiting.store()
  for (const time of [3, 4, 5]) waiting.add(block(time))
  expect(wakes).toBe(2)
  free()
  await first
  const second = waiting.store()
  free()
  await second
  await waiting.store()
  expect(stored).toEqual([
    [1, 2],
    [3, 4, 5],
  ])
})

it('keeps what the disk refused for the next try, in its order', async () => {
  const stored: number[][] = []
  let refuses = true
  const waiting = createWaitingBlocks(
    async ({ timeUs }) => {
      if (refuses) throw new Error('no room')
      stored.push([...timeUs])
    },
    () => {},
  )
  waiting.add(block(1))
  await expect(waiting.store()).rejects.toThrow('no room')
  waiting.add(block(2))
  refuses = false
  await waiting.store()
  expect(stored).toEqual([[1, 2]])
})
