import { expect, it } from 'vitest'
import { modulo } from '#domain/numbers/modulo.ts'

it.each([
  [0, 7, 0],
  [6.5, 7, 6.5],
  [7, 7, 0],
  [-1, 7, 6],
  [-14, 7, 0],
  [2 ** 32 + 3, 2 ** 32, 3],
  [-(2 ** 33) - 5, 2 ** 32, 2 ** 32 - 5],
])('leaves of %s by widths of %s %s', (value, width, left) => {
  expect(modulo(value, width)).toBe(left)
})
