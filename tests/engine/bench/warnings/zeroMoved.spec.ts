import { expect, test } from 'vitest'
import { createZeroMoved } from '#engine/bench/warnings/zeroMoved.ts'

const scale = { kind: 'uncalibrated-scale', nPerCount: 0.01 } as const

test('a zero farther from the one before than a load that would be recorded is questioned until the next', () => {
  const zero = createZeroMoved()
  zero.taken(12, 50, scale)
  expect(zero.moved()).toBeNull()
  // A 10 kg weight, 98 N, lies on the bench.
  zero.taken(110, 50, scale)
  expect(zero.moved()).toEqual({ by: 98, unit: 'N' })
  zero.taken(109, 50, scale)
  expect(zero.moved()).toBeNull()
})

test('zeros under different scales, or of different devices, are not compared', () => {
  const zero = createZeroMoved()
  zero.taken(12, 50, scale)
  zero.taken(4800, 50, { kind: 'none' })
  expect(zero.moved()).toBeNull()
  zero.forget()
  zero.taken(9000, 50, { kind: 'none' })
  expect(zero.moved()).toBeNull()
  zero.taken(9100, 50, { kind: 'none' })
  expect(zero.moved()).toEqual({ by: 100, unit: 'counts' })
})
