import { expect, it } from 'vitest'
import { ageInMonthsWords, calendarDayWords } from '#words/units/calendarDays.ts'

it('names the same day in every time zone', () => {
  const zone = process.env.TZ
  try {
    for (const elsewhere of ['Pacific/Pago_Pago', 'Pacific/Kiritimati']) {
      process.env.TZ = elsewhere
      expect(calendarDayWords('2031-08-31')).toBe('31 Aug 2031')
    }
  } finally {
    if (zone === undefined) delete process.env.TZ
    else process.env.TZ = zone
  }
})

it.each([
  [0, 'at once'],
  [1, '1 month'],
  [6, '6 months'],
  [12, '1 year'],
  [18, '18 months'],
  [360, '30 years'],
])('counts %i months as %s', (months, words) => {
  expect(ageInMonthsWords(months)).toBe(words)
})
