import { expect, it } from 'vitest'
import { yearlyChangeToFind } from '#domain/programme/study/yearlyChange.ts'

// R 4.2.2, the script yearlyChange.R beside this file: the standard error from the design of lm, the power from pt. Simulated
// studies found the first change in 80.3 % (standard error 0.3 %).
it.each([
  [[0, 3, 6, 12, 24, 36], 12, { cvPercent: 10, confidence: 0.95, power: 0.8 }, 3.16372734249839],
  [[0, 12], 3, { cvPercent: 8, confidence: 0.95, power: 0.5 }, 16.8429507952255],
])('of ages %j with %i blocks is that of a straight line in R', (ages, blocks, wanted, percent) => {
  expect(yearlyChangeToFind(ages, blocks, wanted)).toBeCloseTo(percent, 7)
})

it('of thirty years is that of a straight line in R', () => {
  const ages = [0, 6, 12, 18, 24, 30, 36, ...Array.from({ length: 27 }, (_, year) => 48 + 12 * year)]
  expect(yearlyChangeToFind(ages, 4, { cvPercent: 12, confidence: 0.95, power: 0.9 })).toBeCloseTo(0.358830851804628, 8)
})

it('is none with one age or two blocks', () => {
  const wanted = { cvPercent: 10, confidence: 0.95, power: 0.8 }
  expect(yearlyChangeToFind([12], 12, wanted)).toBeNull()
  expect(yearlyChangeToFind([0, 12], 1, wanted)).toBeNull()
})
