import { describe, expect, it } from 'vitest'
import { serialDate, serialSecond } from '#exchange/sheets/serialDate.ts'

// openpyxl 3.1.5: openpyxl.utils.datetime.from_excel(days, WINDOWS_EPOCH) and (days, CALENDAR_MAC_1904)
const from1900 = [
  [1, '1900-01-01'],
  [59, '1900-02-28'],
  [61, '1900-03-01'],
  [36_526, '2000-01-01'],
  [43_831, '2020-01-01'],
  [44_620.75, '2022-02-28'],
  [2_958_465, '9999-12-31'],
] as const
const from1904 = [
  [1, '1904-01-02'],
  [34_519, '1998-07-05'],
  [42_369, '2020-01-01'],
] as const

describe('a day counted by a sheet program', () => {
  it.each(from1900)('%d from 1900 is %s', (days, day) => expect(serialDate(days, false)).toBe(day))
  it.each(from1904)('%d from 1904 is %s', (days, day) => expect(serialDate(days, true)).toBe(day))

  it('is none where no calendar has it: 29 February 1900, before the first and after the last', () => {
    expect([60, 0, -5, 2_958_466, Number.NaN].map((days) => serialDate(days, false))).toEqual(Array(5).fill(null))
    expect(serialDate(-1, true)).toBeNull()
  })

  // openpyxl 3.1.5, from_excel: 10:30:00, 14:05:30, 00:00:01
  it.each([
    [46_082.4375, 37_800],
    [46_082.5871527778, 50_730],
    [46_082.000011574, 1],
    [46_082, 0],
  ])('%d has %d seconds of its day behind it', (days, seconds) => expect(serialSecond(days)).toBe(seconds))
})
