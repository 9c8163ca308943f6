import { expect, it } from 'vitest'
import { sessionReport } from '#domain/programme/breaking/sessionReport.ts'
import { breakingMember } from '#tests/fakes/breakingMembers.ts'
import { breakDoubtWords, groupWords, progressWords, repeatWords } from '#words/programme/breakingWords.ts'
import { plainText } from '#words/units/plainText.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { length, strength } = quantitiesIn('SI')

it('says how far a session is, and of what nothing came only where there is some', () => {
  expect(progressWords({ broken: 7, skipped: 0, withdrawn: 0, specimens: 24 })).toBe('7 of 24 broken')
  expect(progressWords({ broken: 7, skipped: 1, withdrawn: 2, specimens: 24 })).toBe(
    '7 of 24 broken, 1 passed over, 2 withdrawn',
  )
})

it('names a group by what its blocks have in common', () => {
  const [group] = sessionReport([
    breakingMember(1, 8, { fields: { jointType: 'scarf', exposure: 'bilge', bondLineGapMm: 0.5 } }),
  ]).groups
  expect(plainText(groupWords(group!, length))).toBe('casein C1 · scarf · gap 0.5 mm · bilge · 3 months')
  expect(groupWords({ ...group!, bondLineGapMm: 0, ageMonths: null }, length)).toBe('casein C1 · scarf · bilge')
  expect(groupWords({ ...group!, bondLineGapMm: null, ageMonths: null }, length)).toBe(
    'casein C1 · scarf · gap not measured · bilge',
  )
})

it('says what is to be looked at again', () => {
  const said = (doubt: Parameters<typeof breakDoubtWords>[0]) => plainText(breakDoubtWords(doubt, strength))
  expect(said({ kind: 'low', strengthMPa: 3.9, medianMPa: 8 })).toBe(
    '3.900 MPa is low against its group, median 8.000 MPa'.replaceAll('00 MPa', '0 MPa'),
  )
  expect(said({ kind: 'early-drop', percentOfPeak: 61.3 })).toBe('early drop at 61 % of the peak')
  expect(said({ kind: 'early-drop', percentOfPeak: null })).toBe('early drop of the load')
  expect(said({ kind: 'two-results', results: 2 })).toBe('2 results on this specimen')
  expect(said({ kind: 'flag', flag: 'gap-at-peak' })).toBe('gap at peak')
  expect(repeatWords(0)).toBe('no spare of its series waits')
  expect(repeatWords(2)).toBe('2 spares of its series waiting')
})
