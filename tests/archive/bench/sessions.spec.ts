import { expect, test } from 'vitest'
import { beginSession, keepRejectedLines, readSession } from '#archive/bench/sessions.ts'
import { archiveInMemory, morning, session } from '../storedStudy.ts'

test('numbers sessions and gives them back', () => {
  const database = archiveInMemory()
  expect(beginSession(database, session)).toEqual({ sessionId: 1, ...session })
  expect(readSession(database, 1)).toEqual({ sessionId: 1, ...session })
  expect(() => readSession(database, 2)).toThrow('There is no session 2 in this archive.')
})

test('keeps the first thousand rejected lines whole and counts all', () => {
  const database = archiveInMemory()
  const { sessionId } = beginSession(database, session)
  for (let i = 0; i < 1003; i++) keepRejectedLines(database, sessionId, morning, 2, new TextEncoder().encode(`?${i}`))
  expect(database.prepare('SELECT sum(count) AS lines, count(example) AS whole FROM rejected_line').get()).toEqual({
    lines: 2006,
    whole: 1000,
  })
  expect(() => keepRejectedLines(database, 9, morning, 1, new Uint8Array(1))).toThrow(/no session 9/)
})
