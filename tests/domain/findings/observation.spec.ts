import { expect, it } from 'vitest'
import {
  cellsOf,
  censoredStrengths,
  isWoodFailure,
  type Treatment,
  treatedBlocks,
} from '#domain/findings/observation.ts'
import { block } from './knownStudies.ts'

const treatment: Treatment = { woodFailure: 'observed', limitPercent: 75, adjustFactor: 2 }
const torn = [
  block({ strengthMPa: 10, woodFailurePercent: 74.9 }),
  block({ strengthMPa: 11, woodFailurePercent: 75 }),
  block({ strengthMPa: 12 }),
]

it('is a wood failure at the limit and above, and not where nothing was recorded', () => {
  expect(torn.map((one) => isWoodFailure(one, treatment))).toEqual([false, true, false])
})

it.each([
  ['observed', [10, 11, 12]],
  ['censored', [10, 11, 12]],
  ['bond-only', [10, 12]],
  ['adjusted', [10 * 2.498, 11 * 2.5, 12]],
] as const)('takes torn wood as %s', (woodFailure, strengths) => {
  const found = treatedBlocks(torn, { ...treatment, woodFailure }).map(({ strengthMPa }) => strengthMPa)
  expect(found).toHaveLength(strengths.length)
  for (const [i, strength] of found.entries()) expect(strength).toBeCloseTo(strengths[i]!, 12)
})

it('parts strengths into those of failed bonds and those that bonds only held', () => {
  const blocks = [
    { strengthMPa: 7, woodFailurePercent: null },
    { strengthMPa: 8, woodFailurePercent: 74 },
    { strengthMPa: 9, woodFailurePercent: 75 },
  ]
  expect(censoredStrengths(blocks, { limitPercent: 75 })).toEqual({ failed: [7, 8], censored: [9] })
})

it('puts blocks of a group and age together, ages rising, and counts those left out', () => {
  const cells = cellsOf([
    block({ group: 'B', ageMonths: 12, strengthMPa: 1 }),
    block({ group: 'A', ageMonths: 6, strengthMPa: 2, excludedBecause: 'dropped' }),
    block({ group: 'B', ageMonths: 6, strengthMPa: 3 }),
    block({ group: 'B', ageMonths: 12, strengthMPa: 4 }),
  ])
  expect(cells.map(({ group, ageMonths, counted, excluded }) => [group, ageMonths, counted.length, excluded])).toEqual([
    ['B', 6, 1, 0],
    ['B', 12, 2, 0],
    ['A', 6, 0, 1],
  ])
})

it('counts as left out what is no strength in any unit, so that one slip does not spoil all that is said of a group', () => {
  const [cell] = cellsOf([5e-324, 5, 6, 1e308].map((strengthMPa) => block({ group: 'A', ageMonths: 6, strengthMPa })))
  expect([cell!.counted.length, cell!.excluded]).toEqual([2, 2])
})
