import { expect, it } from 'vitest'
import { overviewFilter } from '#contract/findings/overview.ts'
import { overviewGroups } from '#domain/findings/overview/overviewGroups.ts'
import { type OverviewBlock, overviewOf } from '#domain/findings/overview/overviewOf.ts'

const traits = { jointType: 'beech lap', bondLineGapMm: 0.2, exposure: 'loft', ageMonths: null }

it('gives back every block in its group as it was', () => {
  const blocks: OverviewBlock[] = [
    {
      ...{ ...traits, adhesive: 'casein C1', number: 'A', specimenId: 4, breakId: 5, state: 'curve', simulated: false },
      ...{ strengthMPa: 9.5, woodFailurePercent: 0 },
    },
    {
      ...{ ...traits, adhesive: 'epoxy E4', number: 'B', specimenId: null, breakId: null, state: 'planned' },
      ...{ strengthMPa: null, woodFailurePercent: null, simulated: false },
    },
  ]
  const groups = overviewGroups(overviewOf(blocks, overviewFilter.parse({})))
  const back = groups.flatMap(({ blocks: members, ...group }) =>
    members.map((member) => ({ ...group, ...member, simulated: false })),
  )
  expect(back).toEqual(blocks)
})
