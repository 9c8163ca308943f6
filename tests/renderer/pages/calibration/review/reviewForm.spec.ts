import { expect, it } from 'vitest'
import { proposedDueDate, proposedName, readResolution } from '#renderer/pages/calibration/review/reviewForm.ts'

it('reads a resolution, or says what is wrong with it', () => {
  expect(readResolution('0,5')).toEqual({ resolution: 0.5 })
  expect(readResolution(' ')).toEqual({ resolution: null })
  expect(readResolution('fine')).toHaveProperty('error')
  expect(readResolution('0')).toHaveProperty('error')
})

it('proposes a name by the day, and a due date a year from now', () => {
  const day = new Date(2026, 4, 11, 12)
  expect(proposedName(day)).toBe('Weights of 11 May 2026')
  expect(proposedDueDate(day)).toBe('2027-05-11')
})
