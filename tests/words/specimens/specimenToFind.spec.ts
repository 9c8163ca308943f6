import { expect, test } from 'vitest'
import { specimenToFind } from '#words/specimens/specimenToFind.ts'

const specimen = {
  ...{ bondLineGapMm: 0, overlapLengthMm: 30, overlapWidthMm: 20, areaMm2: 600 },
  ...{ gluedOn: '2031-01-09', ageMonths: 24 },
}

test('a specimen can be found by its gap, overlap, area, age and day of glue-up', () => {
  const words = specimenToFind(specimen)
  for (const part of [
    'gap 0 mm',
    'overlap 30 mm',
    'area 600 mm2',
    '9 Jan 2031',
    'January',
    '2031-01-09',
    'age 2 years',
    'age 24 months',
  ])
    expect(words).toContain(part)
})
