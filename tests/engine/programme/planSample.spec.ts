import { expect, it } from 'vitest'
import type { SampleSizeQuestion } from '#contract/programme/sampleSize.ts'
import { planSample } from '#engine/programme/planSample.ts'

const question: SampleSizeQuestion = {
  comparison: 'pair',
  groups: 6,
  cvPercent: 12,
  confidence: 0.95,
  n: null,
  differencePercent: null,
  power: null,
}
const ask = (given: Partial<SampleSizeQuestion>) => planSample({ ...question, ...given })

// R 4.2.2: power.t.test(n = 20, delta = 1, sd = 1, strict = TRUE); power.t.test(power = .9, delta = 1, ...); (n = 12, power = .9)
it('finds the one that is left out, in percent of the mean', () => {
  expect(ask({ n: 20, differencePercent: 12 }).power).toBeCloseTo(0.8689530277, 9)
  expect(ask({ power: 0.9, differencePercent: 12 }).n).toBeCloseTo(22.0210884264, 7)
  expect(ask({ n: 12, power: 0.9 }).differencePercent).toBeCloseTo(12 * 1.385159822880253, 6)
})

it('says what was asked beside what was found', () => {
  const { power, ...asked } = ask({ n: 20, differencePercent: 12 })
  expect(asked).toEqual({
    comparison: 'pair',
    groups: 6,
    cvPercent: 12,
    confidence: 0.95,
    n: 20,
    differencePercent: 12,
  })
})

it('refuses a question with none or two left out', () => {
  expect(() => ask({ n: 20 })).toThrow(/Two of blocks/)
  expect(() => ask({ n: 20, power: 0.9, differencePercent: 12 })).toThrow(/Two of blocks/)
})

it('says when there is no answer, and why', () => {
  expect(() => ask({ power: 0.05, n: 12 })).toThrow(/false alarm, 0\.05/)
  expect(() => ask({ power: 0.9, differencePercent: 0.001 })).toThrow(/more than 1000000 blocks/)
})
