import { expect, it } from 'vitest'
import { planSizeFault } from '#domain/programme/study/planSize.ts'
import { madeStudy } from './madeStudy.ts'

const names = (count: number) => Array.from({ length: count }, (_, i) => `A${i}`)
const ages = (count: number) => Array.from({ length: count }, (_, i) => i)

it('lets a large programme pass', () => {
  // 60 x 5 x 12 cells of 12 blocks: 43,200
  expect(planSizeFault(madeStudy({ adhesives: names(60), exposures: names(5), agesMonths: ages(12) }))).toBeNull()
})

it('counts cells without combining them, as a memory could not hold them', () => {
  const plan = madeStudy({
    ...{ adhesives: names(200), jointTypes: names(200), exposures: names(200), agesMonths: ages(200) },
    gapsMm: ages(200),
  })
  expect(planSizeFault(plan)).toEqual({ kind: 'cells', count: 200 ** 5 })
})

it('counts blocks and spares, without those that are left out', () => {
  const plan = madeStudy({ adhesives: names(101), agesMonths: [0], blocksPerCell: 900, sparesPerSeries: 100 })
  const cells = plan.jointTypes.length * plan.gapsMm.length * plan.exposures.length
  expect(planSizeFault(plan)).toEqual({ kind: 'blocks', count: 101 * cells * 1000 })
  const series = { jointType: plan.jointTypes[0]!, gapMm: plan.gapsMm[0]!, exposure: plan.exposures[0]! }
  const one = madeStudy({
    ...{ ...plan, jointTypes: [series.jointType], gapsMm: [series.gapMm], exposures: [series.exposure] },
    leftOut: [{ adhesive: 'A0', ...series, ageMonths: null }],
  })
  expect(planSizeFault(one)).toBeNull()
})
