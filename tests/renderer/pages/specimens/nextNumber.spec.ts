import { expect, it } from 'vitest'
import { nextNumber } from '#renderer/pages/specimens/nextNumber.ts'

it.each([
  ['C1-01', 'C1-02'],
  ['C1-09', 'C1-10'],
  ['C1-99', 'C1-100'],
  ['7', '8'],
  ['R2-L0-0012', 'R2-L0-0013'],
  // More digits than a double holds
  ['99999999999999999999', '100000000000000000000'],
])('counts on from %s to %s', (number, next) => expect(nextNumber(number)).toBe(next))

it.each(['', 'block', 'C1-07b'])('proposes nothing after %j, which ends in no digit', (number) => {
  expect(nextNumber(number)).toBe('')
})
