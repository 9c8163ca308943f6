import { expect, it } from 'vitest'
import { agesByRule, halfYearlyThenYearly } from '#domain/programme/calendar/agesByRule.ts'

it('goes every six months for three years, then yearly to thirty', () => {
  const yearly = Array.from({ length: 27 }, (_, i) => 48 + 12 * i)
  expect(agesByRule(halfYearlyThenYearly)).toEqual([0, 6, 12, 18, 24, 30, 36, ...yearly])
  expect(yearly.at(-1)).toBe(360)
})

it('begins at the first step where nothing is broken at once', () => {
  expect(agesByRule({ atOnce: false, stretches: [{ everyMonths: 12, untilMonths: 36 }] })).toEqual([12, 24, 36])
})

it('counts a stretch from the end of the one before, also where its own steps did not meet it', () => {
  const stretches = [
    { everyMonths: 4, untilMonths: 10 },
    { everyMonths: 12, untilMonths: 34 },
  ]
  expect(agesByRule({ atOnce: false, stretches })).toEqual([4, 8, 22, 34])
})

it('refuses a stretch that ends before it begins and steps that lead nowhere', () => {
  for (const stretch of [
    { everyMonths: 0, untilMonths: 12 },
    { everyMonths: 1.5, untilMonths: 12 },
    { everyMonths: 6, untilMonths: 0 },
  ])
    expect(() => agesByRule({ atOnce: true, stretches: [stretch] })).toThrow(RangeError)
  const backwards = [
    { everyMonths: 12, untilMonths: 36 },
    { everyMonths: 6, untilMonths: 24 },
  ]
  expect(() => agesByRule({ atOnce: true, stretches: backwards })).toThrow(RangeError)
})
