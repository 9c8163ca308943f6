import { expect, test } from 'vitest'
import { isOverdue } from '#domain/calibration/dueDate.ts'

test('is overdue from the day after the due date on, and never without one', () => {
  expect(isOverdue('2032-05-02', '2032-05-02T23:59:59.000Z')).toBe(false)
  expect(isOverdue('2032-05-02', '2032-05-03T00:00:00.000Z')).toBe(true)
  expect(isOverdue(null, '2099-01-01T00:00:00.000Z')).toBe(false)
})
