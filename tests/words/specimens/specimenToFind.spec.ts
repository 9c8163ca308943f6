import { expect, test } from 'vitest'
import { specimenToFind } from '#words/specimens/specimenToFind.ts'

const specimen = {
  ...{ lot: 'bottle 7', bondLineGapMm: 0, overlapLengthMm: 30, overlapWidthMm: 20, areaMm2: 600 },
  gluedOn: '2031-01-09',
}

test('a specimen can be found by its lot, gap, overlap, area and day of glue-up', () => {
  const words = specimenToFind(specimen)
  for (const part of [
    'bottle 7',
    'tight joint',
    'gap 0 mm',
    'overlap 30 mm',
    'area 600 mm²',
    '9 Jan 2031',
    '2031-01-09',
  ])
    expect(words).toContain(part)
  expect(specimenToFind({ ...specimen, bondLineGapMm: 0.5 })).not.toContain('tight')
})
