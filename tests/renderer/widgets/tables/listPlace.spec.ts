import { expect, test } from 'vitest'
import { placeIn, rememberPlace } from '#renderer/widgets/tables/listPlace.ts'

test('a list is found where it was left, and at its top once it is searched otherwise', () => {
  rememberPlace('Breaks', 'by date', { topPx: 400 })
  rememberPlace('Breaks', 'by date', { active: 12, opened: true })
  expect(placeIn('Breaks', 'by date')).toMatchObject({ topPx: 400, active: 12, opened: true })
  expect(placeIn('Breaks', 'by peak')).toEqual({ topPx: 0, active: 0, opened: false })
  expect(placeIn('Specimens', 'by date')).toEqual({ topPx: 0, active: 0, opened: false })
})
