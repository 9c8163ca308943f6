import { expect, it } from 'vitest'
import { groupFigures, tornWoodOf } from '#domain/findings/overview/groupFigures.ts'
import type { GroupBlock } from '#domain/findings/overview/overviewGroups.ts'

const block = (
  state: GroupBlock['state'],
  strengthMPa: number | null,
  woodFailurePercent: number | null,
): GroupBlock => ({
  ...{ number: '', specimenId: 1, breakId: null, state, strengthMPa, woodFailurePercent },
})

it('tells broken faces by their share of torn wood, the usual limit of a wood failure among them', () => {
  expect([0, 24, 25, 74, 75, 100, null].map(tornWoodOf)).toEqual([
    ...['bond', 'bond', 'partly', 'partly', 'wood', 'wood', 'not-assessed'],
  ])
})

it('takes only blocks that count into its strengths and its wood', () => {
  const found = groupFigures([
    block('curve', 6, 80),
    block('peak-only', 9, 10),
    block('peak-only', 12, null),
    block('excluded', 100, 100),
    block('lost', null, null),
    block('waiting', null, null),
    block('waiting', null, null),
    block('planned', null, null),
  ])
  expect(found).toEqual({
    states: { curve: 1, 'peak-only': 2, excluded: 1, lost: 1, waiting: 2, planned: 1 },
    ...{ meanMPa: 9, leastMPa: 6, mostMPa: 12, wood: 1, assessed: 2 },
  })
})

it('has no strength where no block has one that counts', () => {
  const none = { meanMPa: null, leastMPa: null, mostMPa: null, wood: 0 }
  expect(groupFigures([block('waiting', null, null), block('excluded', 5, 0)])).toMatchObject({ ...none, assessed: 0 })
  expect(groupFigures([block('curve', null, 0)])).toMatchObject({ ...none, assessed: 1 })
})
