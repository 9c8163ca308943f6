import { expect, test } from 'vitest'
import { coalesced } from '#renderer/host/coalesced.ts'

const turn = () => new Promise((resolve) => setImmediate(resolve))

test('runs once more after a run in which it was called, however often', async () => {
  const ends: (() => void)[] = []
  const call = coalesced(() => new Promise((resolve) => ends.push(resolve)))
  call()
  call()
  call()
  expect(ends).toHaveLength(1)
  ends[0]!()
  await turn()
  expect(ends).toHaveLength(2)
  ends[1]!()
  await turn()
  expect(ends).toHaveLength(2)
  call()
  expect(ends).toHaveLength(3)
})
