import { expect, it } from 'vitest'
import type { SampleSizePlan } from '#contract/programme/sampleSize.ts'
import { sampleSizeSentences } from '#words/programme/sampleSizeWords.ts'

const plan: SampleSizePlan = {
  comparison: 'pair',
  groups: 4,
  n: 31.2534,
  cvPercent: 12,
  differencePercent: 10,
  power: 0.9,
  confidence: 0.95,
}

it('rounds blocks up, and says from what', () => {
  expect(sampleSizeSentences(plan)[0]).toMatch(
    /^With 32 blocks a group \(31\.25 before rounding up\), a true difference of 10 %/,
  )
})

it('does not speak of rounding where nothing was rounded', () => {
  expect(sampleSizeSentences({ ...plan, n: 12 })[0]).toMatch(/^With 12 blocks a group, a true/)
})

it('says between which groups the difference lies', () => {
  expect(sampleSizeSentences(plan)[0]).toMatch(/between two groups/)
  const [first, , last] = sampleSizeSentences({ ...plan, comparison: 'any' })
  expect(first).toMatch(/between the strongest and the weakest of 4 groups/)
  expect(last).toMatch(/not which/)
})
