import { expect, it } from 'vitest'
import { blocksNeeded, planFigures } from '#domain/programme/study/planFigures.ts'
import { madeStudy } from './madeStudy.ts'

it('says what two groups, all groups and the years can show', () => {
  const study = madeStudy({ agesMonths: [0, 3, 6, 12, 24, 36] })
  // R 4.2.2: 10 * power.t.test(n = 12, power = 0.8, strict = TRUE, tol = 1e-12)$delta; and for three groups d with
  // power.anova.test(groups = 3, n = 12, between.var = d^2 / 4, within.var = 1)$power = 0.8; the slope of yearlyChange.R
  expect(planFigures(study, 10)).toMatchObject({
    pairPercent: expect.closeTo(11.9681191375296, 6),
    anyPercent: expect.closeTo(13.2699810729, 4),
    yearlyPercent: expect.closeTo(3.16372734249839, 6),
    years: 3,
  })
})

it('says nothing of what one block a cell, one age or one adhesive cannot show', () => {
  expect(planFigures(madeStudy({ blocksPerCell: 1 }), 10)).toMatchObject({ pairPercent: null, anyPercent: null })
  expect(planFigures(madeStudy({ agesMonths: [0] }), 10)).toMatchObject({ yearlyPercent: null, years: 0 })
  expect(planFigures(madeStudy({ adhesives: ['casein C1'] }), 10).anyPercent).toBeNull()
})

it('rounds the blocks that are needed up', () => {
  // R 4.2.2: power.t.test(power = 0.8, delta = 0.8, sd = 1, strict = TRUE)$n = 25.52457
  expect(blocksNeeded(8, { confidence: 0.95, power: 0.8 }, 10)).toBe(26)
  expect(blocksNeeded(0.001, { confidence: 0.95, power: 0.8 }, 10)).toBeNull()
})
