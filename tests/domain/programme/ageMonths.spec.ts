import { expect, test } from 'vitest'
import { ageMonths } from '#domain/programme/ageMonths.ts'

// Python 3: round((date.fromisoformat(b) - date.fromisoformat(a)).days / (365.2425 / 12))
test.each([
  ['2031-03-01', '2031-03-08', 0],
  ['2031-03-01', '2031-03-15', 0],
  ['2031-03-01', '2031-03-17', 1],
  ['2031-01-31', '2031-02-28', 1],
  ['2031-03-01', '2031-08-29', 6],
  ['2031-03-01', '2031-09-04', 6],
  ['2031-03-01', '2033-03-01', 24],
  ['2024-02-29', '2056-02-29', 384],
])('from %s to %s is an age of %i months', (gluedOn, testedOn, months) => {
  expect(ageMonths(gluedOn, testedOn)).toBe(months)
})

test('takes the day of an instant, whatever its hour', () => {
  for (const hour of ['00:00:00.000Z', '23:59:59.999Z']) expect(ageMonths('2031-03-01', `2031-06-01T${hour}`)).toBe(3)
})

test('an age of nothing is 0, not minus 0', () => {
  expect(ageMonths('2031-03-01', '2031-03-01')).toBe(0)
  expect(Object.is(ageMonths('2031-03-05', '2031-03-01'), 0)).toBe(true)
})

test('refuses what is no date', () => {
  expect(() => ageMonths('spring', '2031-03-01')).toThrow(RangeError)
})

test('refuses a day that the calendar does not have', () => {
  expect(() => ageMonths('2026-02-30', '2031-03-01')).toThrow(RangeError)
})
