import { describe, expect, it } from 'vitest'
import { seriesOf } from '#domain/findings/ageing/series.ts'
import { cellsOf } from '#domain/findings/observation.ts'
import { block } from '../knownStudies.ts'

const treatment = { woodFailure: 'observed', limitPercent: 75, adjustFactor: 1 } as const
const cells = cellsOf([
  block({ group: 'A', ageMonths: 12, ageAtBreakMonths: 12.4, strengthMPa: 8, woodFailurePercent: 80 }),
  block({ group: 'B', ageMonths: 0, strengthMPa: 9 }),
  block({ group: 'A', ageMonths: 0, ageAtBreakMonths: null, strengthMPa: 10 }),
  block({ group: 'A', ageMonths: null, strengthMPa: 7 }),
])

describe('series', () => {
  it('are groups over their ages, each block with its own age at the break', () => {
    expect(seriesOf(cells, treatment)).toEqual([
      {
        group: 'A',
        ages: [
          { ageMonths: 0, blocks: [{ ageMonths: 0, strengthMPa: 10, held: false }] },
          { ageMonths: 12, blocks: [{ ageMonths: 12.4, strengthMPa: 8, held: false }] },
        ],
      },
      { group: 'B', ages: [{ ageMonths: 0, blocks: [{ ageMonths: 0, strengthMPa: 9, held: false }] }] },
    ])
  })

  it('know of bonds that held more where torn wood is censored, and are without those blocks where bonds alone count', () => {
    const held = (woodFailure: 'censored' | 'bond-only') =>
      seriesOf(cells, { ...treatment, woodFailure })[0]!.ages.map(({ blocks }) => blocks.map((one) => one.held))
    expect(held('censored')).toEqual([[false], [true]])
    expect(held('bond-only')).toEqual([[false], []])
  })
})
