import { expect, it } from 'vitest'
import {
  proposedDueDate,
  proposedName,
  readResolution,
  readTemperature,
} from '#renderer/pages/calibration/review/reviewForm.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

it('reads a resolution, or says what is wrong with it', () => {
  expect(readResolution('0,5', 'counts')).toEqual({ resolution: 0.5 })
  expect(readResolution(' ', 'N')).toEqual({ resolution: null })
  expect(readResolution('fine', 'N')).toHaveProperty('error')
  expect(readResolution('0', 'N')).toHaveProperty('error')
})

it('reads a temperature in the units of the program', () => {
  const { temperature } = quantitiesIn('US')
  expect(readTemperature('68', temperature)).toEqual({ temperatureC: 20 })
  expect(readTemperature('20 °C', temperature)).toEqual({ temperatureC: 20 })
  expect(readTemperature('warm', temperature)).toHaveProperty('error')
})

it('proposes a name by the day, and a due date a year from now', () => {
  const day = new Date(2026, 4, 11, 12)
  expect(proposedName(day)).toBe('Weights of 11 May 2026')
  expect(proposedDueDate(day)).toBe('2027-05-11')
})
