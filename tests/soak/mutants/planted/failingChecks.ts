import { expect, it } from 'vitest'
import { shareFromLimit } from './limit.ts'

it('is wrong', () => {
  expect(shareFromLimit([2, 50])).toBe(0.9)
})
