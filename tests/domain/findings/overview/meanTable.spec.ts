import { expect, it } from 'vitest'
import { findingsOptions } from '#contract/findings/options.ts'
import { type MeanTreatment, meanTreatment } from '#contract/findings/overview.ts'
import { findingLines } from '#domain/findings/lines/findingLines.ts'
import { meanTable } from '#domain/findings/overview/meanTable.ts'
import type { GroupBlock, OverviewGroup } from '#domain/findings/overview/overviewGroups.ts'

const treated = (woodFailure: MeanTreatment['woodFailure']) => meanTreatment.parse({ woodFailure })
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
const means = (groups: OverviewGroup[], woodFailure: MeanTreatment['woodFailure'], reference: string | null = null) =>
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

it.each([
  ['observed', 'normal'],
  ['bond-only', 'normal'],
  ['adjusted', 'normal'],
  ['censored', 'normal'],
  ['censored', 'lognormal'],
  ['censored', 'weibull'],
] as const)('has the number of the findings for blocks %s (%s)', (woodFailure, distribution) => {
  const blocks = [block(7.1), block(8.3, 20), block(9.6, 80), block(8.9, null), block(6.2, 5), block(11.4, 100)]
  const treatment = meanTreatment.parse({ woodFailure, distribution, limitPercent: 70, adjustFactor: 0.4 })
  const [mean] = meanTable([group('C1', blocks)], treatment, null)
  const observations = blocks.map(({ strengthMPa, woodFailurePercent }) => ({
    ...{ group: 'C1', ageMonths: 6, specimen: null, board: null, excludedBecause: null, simulated: false },
    ...{ strengthMPa: strengthMPa!, woodFailurePercent },
  }))
  const kind = woodFailure === 'censored' ? 'censored-fit' : 'group-summary'
  const lines = [...findingLines(observations, findingsOptions.parse({ ...treatment, only: [kind] }))]
  expect(lines.find((line) => line.kind === kind)).toMatchObject({ meanMPa: expect.closeTo(mean!.meanMPa!, 12) })
})

it('says of a censored mean how many bonds held more, and why there is none', () => {
  const of = (blocks: GroupBlock[]) => meanTable([group('C1', blocks)], treated('censored'), null)[0]
  expect(of([block(7), block(8), block(9, 80), block(9, 0, 'excluded')])).toMatchObject({ n: 3, held: 1, noFit: null })
  expect(of([block(7, 90), block(8, 100)])).toMatchObject({ n: 2, held: 2, meanMPa: null, noFit: 'no-failure' })
  expect(of([block(7), block(7)])).toMatchObject({ n: 2, held: 0, meanMPa: null, noFit: 'no-spread' })
  expect(of([])).toMatchObject({ n: 0, meanMPa: null, noFit: null })
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
