import { expect, it } from 'vitest'
import { sessionTitle } from '#renderer/pages/programme/breaking/sessionTitle.ts'
import { madePull } from './madePull.ts'

it('calls a session by its pulls, each name once, and by what is added to them', () => {
  expect(sessionTitle([madePull(), madePull({ gluedOn: '2031-03-08' })], 0)).toBe('Loft, 3 months')
  expect(sessionTitle([madePull(), madePull({ ageMonths: 12 })], 2)).toBe(
    'Loft, 3 months; Loft, 1 year; 2 more specimens',
  )
  expect(sessionTitle([], 1)).toBe('1 specimen')
  expect(
    sessionTitle(
      Array.from({ length: 40 }, (_, at) => madePull({ ageMonths: at })),
      0,
    ),
  ).toHaveLength(199)
})
