import { createHash } from 'node:crypto'
import { expect, it } from 'vitest'
import { plusDays } from '#domain/programme/calendar/calendarDay.ts'
import { plusMonths } from '#domain/programme/calendar/plusMonths.ts'

// fixtures/plusMonths.py: python-dateutil 2.9.0, relativedelta
it.each([
  ['2031-08-31', 6, '2032-02-29'],
  ['2031-08-31', 12, '2032-08-31'],
  ['2030-08-31', 6, '2031-02-28'],
  ['2028-02-29', 12, '2029-02-28'],
  ['2028-02-29', 48, '2032-02-29'],
  ['2031-01-31', 1, '2031-02-28'],
  ['2031-12-15', 1, '2032-01-15'],
  ['2031-05-31', 360, '2061-05-31'],
  ['2099-08-31', 6, '2100-02-28'],
  ['2031-03-31', -1, '2031-02-28'],
  ['0001-01-31', 1, '0001-02-28'],
  ['0099-12-31', 2, '0100-02-28'],
])('%s and %i months are %s', (start, months, end) => {
  expect(plusMonths(start, months)).toBe(end)
})

it('is that of python-dateutil for every day of four years and every half year to thirty', () => {
  const lines = createHash('sha256')
  for (let start = '2028-01-01'; start < '2032'; start = plusDays(start, 1))
    for (let months = 0; months <= 360; months += 6) lines.update(`${start} ${months} ${plusMonths(start, months)}\n`)
  // fixtures/plusMonths.py
  expect(lines.digest('hex')).toBe('a070dcca4c36fe81dc1278aeeeca9ebb79ce58142478acde12d6d80b933aefc5')
})

it('ends on the last day that a date can name', () => {
  expect(plusMonths('9999-12-31', 12)).toBe('9999-12-31')
})

it('refuses dates that do not exist and months that are not whole', () => {
  for (const date of ['2031-02-30', '2031-13-01', '2030-02-29', '31.8.2031', '2031-08-31T00:00:00.000Z', ''])
    expect(() => plusMonths(date, 6), date).toThrow(RangeError)
  expect(() => plusMonths('2031-08-31', 1.5)).toThrow(RangeError)
})
