import { expect, test } from 'vitest'
import { createChanges, topicsRead } from '#renderer/host/changes.ts'

test('calls once for each change that touches what is followed, and not for others', () => {
  const changes = createChanges()
  const called: string[] = []
  changes.follow(['break 3'], () => called.push('break 3'))
  changes.follow(['breaks', 'specimens'], () => called.push('lists'))
  changes.tell(['break 3', 'specimen 1', 'specimen 2'])
  changes.tell(['break 4'])
  changes.tell(['weights'])
  expect(called).toEqual(['break 3', 'lists', 'lists'])
})

test('calls everybody after the host was away, even those that read no record', () => {
  const changes = createChanges()
  const called: number[] = []
  changes.follow(['break 3'], () => called.push(1))
  changes.follow([], () => called.push(2))
  changes.tell('everything')
  expect(called).toEqual([1, 2])
})

test('calls nobody who has gone, nor one who comes while it is told', () => {
  const changes = createChanges()
  const called: number[] = []
  const end = changes.follow(['breaks'], () => called.push(1))
  changes.follow(['breaks'], () => changes.follow(['breaks'], () => called.push(2)))
  end()
  changes.tell(['break 1'])
  expect(called).toEqual([])
})

test('knows what a question reads, with its defaults filled in', () => {
  expect(topicsRead('breaks.get', { breakId: 7 })).toEqual(['break 7'])
  expect(topicsRead('checkWeight.history', {})).toEqual(['checks', 'calibrations'])
  expect(topicsRead('checkWeight.history', { calibrationId: 2 })).toEqual(['checks', 'calibration 2'])
})

test('takes a question that is refused for one that reads nothing', () => {
  expect(topicsRead('breaks.get', { breakId: 0.5 })).toEqual([])
})
