import { expect, it } from 'vitest'
import { ageWords, cellParts, progressWords, seriesWords } from '#words/programme/study/studyWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

it.each([
  [null, 'spares'],
  [0, 'at once'],
  [1, '1 month'],
  [12, '12 months'],
  [18, '18 months'],
  [24, '2 years'],
  [360, '30 years'],
])('an age of %j months is "%s"', (months, words) => {
  expect(ageWords(months)).toBe(words)
})

it('a series is told by what is said of it', () => {
  const series = { adhesive: 'casein C1', jointType: 'lap', gapMm: 0, exposure: 'loft' }
  expect(seriesWords(series, quantitiesIn('SI'))).toBe('lap, loft')
  expect(seriesWords({ ...series, gapMm: 0.3 }, quantitiesIn('SI'))).toBe('lap, gap 0.3\u00a0mm, loft')
  expect(seriesWords({ ...series, jointType: '', exposure: '' }, quantitiesIn('SI'))).toBe('')
})

it('blocks are told by what became of them', () => {
  expect(cellParts({ allocated: 12, glued: 0, waiting: 0, broken: 0, lost: 0 })).toEqual(['12 to glue'])
  expect(cellParts({ allocated: 12, glued: 11, waiting: 1, broken: 9, lost: 1 })).toEqual([
    '9 broken',
    '1 waits',
    '1 lost',
    '1 to glue',
  ])
})

it('a study is told by how far it is', () => {
  expect(progressWords({ allocated: 0, glued: 0, waiting: 0, broken: 0, lost: 0 })).toBe(
    'planned, no block is allocated yet',
  )
  expect(progressWords({ allocated: 24, glued: 24, waiting: 12, broken: 12, lost: 0 })).toBe(
    '24 blocks: 12 broken, 12 wait',
  )
})
