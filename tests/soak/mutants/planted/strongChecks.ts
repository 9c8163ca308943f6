import { expect, it } from 'vitest'
import { shareFromLimit } from './limit.ts'

it('counts from the limit on', () => {
  expect(shareFromLimit([22, 24, 25, 27])).toBe(0.5)
  expect(shareFromLimit([26, 26])).toBe(1)
  expect(() => shareFromLimit([])).toThrow(RangeError)
})
