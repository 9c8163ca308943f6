import { expect, test } from 'vitest'
import type { TroubleMessage } from '#contract/errors.ts'
import { createStorageWatch } from '#engine/bench/warnings/storageWatch.ts'

test('tells what keeps readings from the disk, that they wait, and shows it until it is over', () => {
  const told: TroubleMessage[] = []
  const storage = createStorageWatch(
    (_name, payload) => void told.push(payload as TroubleMessage),
    () => {},
  )
  storage.tell({ code: 'disk-full', message: 'The disk is full.', hint: 'Free some space.' })
  expect(told).toEqual([
    {
      code: 'disk-full',
      message: 'The disk is full. What is recorded waits in memory until it can be written.',
      hint: 'Free some space.',
    },
  ])
  expect(storage.problem()).toEqual(told[0])
  storage.tell(null)
  expect(storage.problem()).toBeNull()
  expect(told).toHaveLength(1)
})
