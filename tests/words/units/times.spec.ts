import { expect, it } from 'vitest'
import { ageWords, calendarDayToFind, dayWords, instantWords } from '#words/units/times.ts'

it('writes an instant and its day in local time', () => {
  const instant = new Date(2026, 10, 25, 14, 5).toISOString()
  expect(instantWords(instant)).toBe('25 Nov 2026, 14:05')
  expect(dayWords(instant)).toBe('25 Nov 2026')
})

it('says how long ago in whole seconds to a minute, in minutes to an hour and a half, then in hours', () => {
  expect([-0.4, 0.6, 59.4, 60, 149, 5399, 5400, 9100].map(ageWords)).toEqual([
    '0 s',
    '1 s',
    '59 s',
    '1 min',
    '2 min',
    '90 min',
    '2 h',
    '3 h',
  ])
})

it('finds a day of the calendar in every way in which people write it, and nothing that is none', () => {
  for (const part of ['1 Jun 2031', 'June', '2031-06-01']) expect(calendarDayToFind('2031-06-01')).toContain(part)
  expect(calendarDayToFind(null)).toBe('')
  expect(calendarDayToFind('soon')).toBe('')
})
