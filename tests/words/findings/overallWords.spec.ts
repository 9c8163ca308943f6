import { describe, expect, it } from 'vitest'
import {
  differs,
  overallFigureWords,
  overallIntro,
  ratioWords,
  standingWords,
  weightWords,
} from '#words/findings/overallWords.ts'

const of = (ratio: number | null, low: number | null = null, high: number | null = null, missing: string[] = []) => ({
  ...{ adhesive: 'E4', ratio, low, high, missing },
})

describe('a standing in words', () => {
  it('holds more or less only where the interval leaves out 100 %', () => {
    expect(standingWords(of(1.12, 1.04, 1.21), 'R2')).toBe('E4 holds more than R2: 112 % (104 % to 121 %).')
    expect(standingWords(of(0.8, 0.7, 0.9), 'R2')).toBe('E4 holds less than R2: 80 % (70 % to 90 %).')
    expect(standingWords(of(1.12, 0.99, 1.25), 'R2')).toBe('E4 is not to be told from R2: 112 % (99 % to 125 %).')
    expect(differs(of(1.12, 1, 1.25))).toBe(false)
  })
  it('claims nothing without an interval, and nothing at all without a common condition', () => {
    expect(standingWords(of(1.5), 'R2')).toMatch(/^E4: 150 % of R2, without an interval/)
    expect(standingWords(of(null), 'R2')).toBe('E4 has no condition in common with R2.')
    expect(ratioWords(of(null))).toBe('–')
  })
  it('says where it is missing', () => {
    expect(standingWords(of(1, 0.9, 1.1, ['bilge', 'boil']), 'R2')).toMatch(
      /Without blocks to compare in: bilge; boil\.$/,
    )
  })
})

it('states the weights, each where they differ', () => {
  const conditions = (weight: number) => [
    { name: 'loft', weight: 1 },
    { name: 'bilge', weight },
  ]
  expect(overallIntro(conditions(1), 'R2')).toMatch(/in 2 conditions, all with the same weight: loft and bilge\.$/)
  expect(overallIntro(conditions(0.5), 'R2')).toMatch(
    /weighted as said: loft \(weight 1\) and bilge \(weight 0\.5\)\.$/,
  )
  expect(weightWords(2)).toBe('weight 2')
})

it('describes the figure by its adhesives', () => {
  expect(overallFigureWords([of(1.12, 1.04, 1.21)], 'R2')).toBe('E4 holds more than R2: 112 % (104 % to 121 %).')
  expect(overallFigureWords([of(null)], 'R2')).toBe('No adhesive has a condition in common with R2.')
})
