import { expect, it } from 'vitest'
import { dialListWords, dialRecordedWords, noSpecimenWords } from '#words/specimens/dialWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

it('says how a list stands', () => {
  expect(dialListWords({ read: 0, wrong: 0, asked: 0 })).toBe('')
  expect(dialListWords({ read: 12, wrong: 0, asked: 0 })).toBe('12 readings understood.')
  expect(dialListWords({ read: 1, wrong: 2, asked: 1 })).toBe('1 reading understood, 1 question, 2 lines to mend.')
  expect(dialRecordedWords(1)).toBe('1 reading is recorded.')
})

const { length } = quantitiesIn('SI')

it('names the numbers near to one that is not there', () => {
  const asked = { number: '29', areaMm2: null, timesBroken: 0 }
  const words = noSpecimenWords(
    '29',
    { ...asked, found: { kind: 'none', wrongCheck: true, nearest: ['28', '36'] } },
    length,
  )
  expect(words).toMatch(/check digit does not fit.*28, 36$/)
  expect(
    noSpecimenWords('28', { ...asked, found: { kind: 'specimen', specimenId: 1, number: '28' } }, length),
  ).toBeNull()
})
