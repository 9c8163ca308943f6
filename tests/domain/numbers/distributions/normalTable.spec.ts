import { expect, it } from 'vitest'
import { normalProbability } from '#domain/numbers/distributions/normal.ts'
import { normalFromTable, normalNodes } from '#domain/numbers/distributions/normalTable.ts'

it('is the normal distribution in all digits of its lower tail', () => {
  let worst = 0
  for (let z = -12; z < 9; z += 0.0137) worst = Math.max(worst, Math.abs(normalFromTable(z) / normalProbability(z) - 1))
  expect(worst).toBeLessThan(1e-13)
})

it('ends in 0 and 1', () => {
  expect([normalFromTable(-40), normalFromTable(9), normalFromTable(40)]).toEqual([0, 1, 1])
})

it('has a node for each sixteenth', () => {
  expect(normalNodes()[27 * 16]).toBe(0.5)
  expect(normalNodes()[27 * 16 + 16]).toBe(normalProbability(1))
})
