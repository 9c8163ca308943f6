import { expect, it } from 'vitest'
import { freezeThawCounter } from '#domain/climate/freezeThaw.ts'

it('counts a frost once it has thawed, and no trembling about 0', () => {
  const counter = freezeThawCounter()
  for (const temperature of [5, -5, 0.5, -0.5, 0.5, 5, -3, 4, -2]) counter.push(temperature)
  expect(counter.cycles()).toBe(2)
})
