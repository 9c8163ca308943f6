import { expect, it } from 'vitest'
import { findingsOptions } from '#contract/findings/options.ts'
import { meanTable } from '#domain/findings/overview/meanTable.ts'
import type { GroupBlock, OverviewGroup } from '#domain/findings/overview/overviewGroups.ts'

const treated = (woodFailure: 'observed' | 'bond-only' | 'adjusted') => findingsOptions.parse({ woodFailure })
const block = (
  strengthMPa: number | null,
  woodFailurePercent: number | null = 0,
  state: GroupBlock['state'] = 'curve',
) => ({
  ...{ number: '', specimenId: 1, breakId: null, state, strengthMPa, woodFailurePercent },
})
const group = (adhesive: string, blocks: GroupBlock[], change: Partial<OverviewGroup> = {}): OverviewGroup => ({
  ...{ adhesive, jointType: 'beech lap', bondLineGapMm: 0, exposure: 'loft', ageMonths: 6, blocks },
  ...change,
})
const means = (
  groups: OverviewGroup[],
  woodFailure: 'observed' | 'bond-only' | 'adjusted',
  reference: string | null = null,
) =>
  meanTable(groups, treated(woodFailure), reference).map(({ n, meanMPa, percentOfReference }) => [
    n,
    meanMPa,
    percentOfReference,
  ])

it('takes the blocks that count, as observed, without wood failures, or raised for their torn wood', () => {
  const groups = [group('C1', [block(8), block(10, 75), block(12, null), block(90, 0, 'excluded'), block(null)])]
  expect(means(groups, 'observed')).toEqual([[3, 10, null]])
  expect(means(groups, 'bond-only')).toEqual([[2, 10, null]])
  expect(means(groups, 'adjusted')).toEqual([[3, (8 + 17.5 + 12) / 3, null]])
})

it('holds each mean against the reference in the same condition at the same age', () => {
  const groups = [
    group('C1', [block(6)]),
    group('C1', [block(6)], { ageMonths: 12 }),
    group('C1', [block(6)], { exposure: 'bilge' }),
    group('E4', [block(12)]),
    group('E4', [block(8)], { exposure: 'bilge' }),
    group('E4', [], { ageMonths: 12 }),
  ]
  expect(means(groups, 'observed', 'e4')).toEqual([
    [1, 6, 50],
    [1, 6, null],
    [1, 6, 75],
    [1, 12, 100],
    [1, 8, 100],
    [0, null, null],
  ])
})
