import { expect, test } from 'vitest'
import { isOverdue } from '#domain/calibration/dueDate.ts'
import { standIn } from '#tests/fakes/time/standIn.ts'

test('is overdue from the day after the due date on, and never without one', () => {
  standIn('UTC')
  expect(isOverdue('2032-05-02', '2032-05-02T23:59:59.000Z')).toBe(false)
  expect(isOverdue('2032-05-02', '2032-05-03T00:00:00.000Z')).toBe(true)
  expect(isOverdue(null, '2099-01-01T00:00:00.000Z')).toBe(false)
})

test('is not overdue while the day lasts where the person is', () => {
  standIn('America/Los_Angeles')
  expect(isOverdue('2032-05-02', '2032-05-03T06:59:00.000Z')).toBe(false)
  expect(isOverdue('2032-05-02', '2032-05-03T07:00:00.000Z')).toBe(true)
})
