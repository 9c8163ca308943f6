import { expect, it } from 'vitest'
import { countOf, ofWords } from '#words/units/counts.ts'

it('says one of a thing and many, with the many of an irregular word', () => {
  expect(countOf(1, 'reading')).toBe('1 reading')
  expect(countOf(0, 'reading')).toBe('0 readings')
  expect(countOf(12_000, 'sample')).toBe('12\u2009000 samples')
  expect(countOf(2, 'mass', 'masses')).toBe('2 masses')
})

it('says how many of all are done', () => expect(ofWords(312, 12_000)).toBe('312 of 12\u2009000'))
