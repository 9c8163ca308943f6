import { expect, it } from 'vitest'
import { movedWords, treatedName, treatmentWords } from '#words/findings/treatmentWords.ts'

const given = { limitPercent: 60, adjustFactor: 0.5 }

it('names each treatment with the number that it hangs on', () => {
  expect(treatmentWords({ ...given, woodFailure: 'observed' })).toBe('as observed')
  expect(treatmentWords({ ...given, woodFailure: 'bond-only' })).toBe('bond failures only (below 60 % torn wood)')
  expect(treatmentWords({ ...given, woodFailure: 'censored' })).toMatch(/from 60 % torn wood on/)
  expect(treatmentWords({ ...given, woodFailure: 'adjusted' })).toBe(
    'adjusted (strength x (1 + 0.5 x torn wood / 100))',
  )
  expect(treatmentWords({ ...given, adjustFactor: 1, woodFailure: 'adjusted' })).toContain('(1 + 1 x')
})

it('names the distribution of a censored one', () => {
  expect(treatedName({ ...given, woodFailure: 'censored', distribution: 'weibull' })).toBe(
    'censored from 60 % torn wood on, Weibull',
  )
  expect(treatedName({ ...given, woodFailure: 'observed', distribution: null })).toBe('as observed')
})

it('says how far a group moved, and nothing where it did not', () => {
  expect([2, -1, 0, null].map(movedWords)).toEqual([' (up 2)', ' (down 1)', '', ''])
})
