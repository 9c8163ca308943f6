import { expect, it } from 'vitest'
import { stillToComeQuestion } from '#words/units/typedDay.ts'

it('asks about a day that is still to come, and of none that is past, today or not written yet', () => {
  expect(stillToComeQuestion('2032-01-01', '2031-12-31')).toBe('That day is still to come. Is the year right?')
  for (const day of ['2031-12-31', '1999-12-31', '', '9'])
    expect(stillToComeQuestion(day, '2031-12-31'), day).toBeNull()
})
