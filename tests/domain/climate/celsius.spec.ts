import { expect, it } from 'vitest'
import { celsius } from '#domain/climate/celsius.ts'

it('is that of ice, of boiling water and of where both scales meet', () => {
  expect([32, 212, -40].map((value) => celsius(value, 'F'))).toEqual([0, 100, -40])
  expect(celsius(21.5, 'C')).toBe(21.5)
})
