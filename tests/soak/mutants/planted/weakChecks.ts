import { expect, it } from 'vitest'
import { shareFromLimit } from './limit.ts'

it('gives a share', () => {
  expect(shareFromLimit([2, 50])).toBeGreaterThanOrEqual(0)
})
