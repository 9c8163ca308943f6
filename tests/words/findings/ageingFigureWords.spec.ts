import { expect, it } from 'vitest'
import {
  agedBlockWords,
  agedMeanWords,
  ageingFigureWords,
  atAge,
  upcomingWords,
  whenBroken,
} from '#words/findings/ageingFigureWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { strength } = quantitiesIn('SI')
const block = { name: 'C-1', strengthMPa: 7, lowerLimit: false, woodFailurePercent: 40, ageMonths: 13 }
const mean = { ageMonths: 12, n: 3, meanMPa: 7, lowMPa: 6, highMPa: 8 }
const curve = [
  { ageMonths: 0, meanMPa: 8, lowMPa: 7, highMPa: 9 },
  { ageMonths: 120, meanMPa: 5, lowMPa: 2, highMPa: 9 },
]
const picture = { name: 'casein C1', blocks: [block], means: [mean], curve, upcomingMonths: [24, 120], endMonths: 120 }

it('counts ages in months, and in years where they are whole', () => {
  expect([0, 1, 6, 12, 18, 360].map(atAge)).toEqual([
    '0 months',
    '1 month',
    '6 months',
    '1 year',
    '18 months',
    '30 years',
  ])
})

it('says when blocks were broken, also where that is not known', () => {
  expect([24, null].map(whenBroken)).toEqual(['at 2 years', 'at an age that is not known'])
})

it('says of a block its own age, of a mean its interval where there is one', () => {
  expect(agedBlockWords(block, strength)).toBe('C-1: 7.00\u00a0MPa, 40 % wood failure, 13 months')
  expect(agedMeanWords(mean, strength)).toBe('1 year: mean 7.00\u00a0MPa (6.00 to 8.00\u00a0MPa) of 3 blocks')
  expect(agedMeanWords({ ...mean, n: 1, lowMPa: null, highMPa: null }, strength)).toMatch(/no interval of 1 block$/)
})

it('expects of an age to come what the line says, and nothing without a line', () => {
  expect(upcomingWords(120, curve, strength)).toBe(
    '10 years: still to come, 5.00\u00a0MPa expected (2.00 to 9.00\u00a0MPa)',
  )
  expect(upcomingWords(120, null, strength)).toBe('10 years: still to come')
})

it('describes the whole figure for who does not see it', () => {
  expect(ageingFigureWords(picture, strength)).toBe(
    'Strength against age of casein C1: 1 block at 1 age. 1 year: mean 7.00\u00a0MPa (6.00 to 8.00\u00a0MPa) of 3 blocks. ' +
      'The line averaged over the models leads to 10 years: 5.00\u00a0MPa expected (2.00 to 9.00\u00a0MPa). ' +
      '2 of the ages are still to come, the last at 10 years.',
  )
  const young = ageingFigureWords({ ...picture, curve: null, upcomingMonths: [] }, strength)
  expect(young).toMatch(/No line is drawn: too few ages\.$/)
})
