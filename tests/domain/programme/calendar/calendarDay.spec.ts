import { expect, it } from 'vitest'
import { dayOf, isoDayOf, localDayOf, plusDays } from '#domain/programme/calendar/calendarDay.ts'
import { standIn } from '#tests/fakes/time/standIn.ts'

it('counts days as Python counts them', () => {
  // Python 3: (date(2031, 8, 31) - date(1970, 1, 1)).days
  expect(dayOf('2031-08-31')).toBe(22_522)
  expect(isoDayOf(22_522)).toBe('2031-08-31')
  expect(dayOf('1970-01-01')).toBe(0)
})

it('goes over the end of a year and back', () => {
  expect(plusDays('2031-12-31', 1)).toBe('2032-01-01')
  expect(plusDays('2032-03-01', -1)).toBe('2032-02-29')
})

it('stays within the dates of four digits', () => {
  // Python 3: (date.max - date(1970, 1, 1)).days
  expect(dayOf('9999-12-31')).toBe(2_932_896)
  expect(plusDays('9999-12-31', 1)).toBe('9999-12-31')
  expect(plusDays('0000-01-01', -1)).toBe('0000-01-01')
})

it('refuses a day that the calendar does not have', () => {
  for (const date of ['2026-02-30', '2026-04-31', '2026-00-10', '26-02-03'])
    expect(() => dayOf(date)).toThrow(RangeError)
})

// Source: the offsets of the two zones in May (UTC-7 and UTC+12, IANA time zone data base).
it.each([
  ['America/Los_Angeles', '2031-05-02T06:59:00.000Z', '2031-05-01'],
  ['America/Los_Angeles', '2031-05-02T07:00:00.000Z', '2031-05-02'],
  ['Pacific/Auckland', '2031-05-01T11:59:00.000Z', '2031-05-01'],
  ['Pacific/Auckland', '2031-05-01T12:00:00.000Z', '2031-05-02'],
])('changes the day of a person in %s at midnight there: %s', (zone, instant, day) => {
  standIn(zone)
  expect(localDayOf(instant)).toBe(day)
})
