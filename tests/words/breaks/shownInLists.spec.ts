import { expect, test } from 'vitest'
import { figureToFind, loadsToFind, momentToFind } from '#words/breaks/shownInLists.ts'
import { instantWords } from '#words/units/times.ts'

test('a result can be found by its loads and its wood failure', () => {
  const words = loadsToFind(15_939.1, 9.87, 40)
  for (const part of ['peak 15939 N', 'strength 9.87 MPa', 'wood failure 40 %']) expect(words).toContain(part)
  expect(loadsToFind(null, null, null).trim()).toBe('')
})

test('a break can be found by its moment as its row has it, by the name of its month and by the date', () => {
  const startedAt = '2031-05-02T09:30:00.000Z'
  for (const part of [instantWords(startedAt), 'May', '2031-05-02']) expect(momentToFind(startedAt)).toContain(part)
})

test('a figure is written in both systems of units, without thin spaces', () => {
  expect(figureToFind('gap', 0, 'length')).toBe('gap 0 mm gap 0 in')
  expect(figureToFind('peak', null, 'force')).toBe('')
})
