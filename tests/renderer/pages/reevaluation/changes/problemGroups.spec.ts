import { expect, it } from 'vitest'
import { problemGroups } from '#renderer/pages/reevaluation/changes/problemGroups.ts'

it('puts breaks with one reason together, though each reason names its own break, the commonest first', () => {
  const wrongUnit = (breakId: number) => ({
    breakId,
    message: `Calibration 1 is for readings in counts; those of break ${breakId} are in N.`,
  })
  expect(
    problemGroups([{ breakId: 1, message: 'Break 1 is still being recorded.' }, wrongUnit(3), wrongUnit(30)]),
  ).toEqual([
    { message: 'Calibration 1 is for readings in counts; those of break … are in N.', breakIds: [3, 30] },
    { message: 'break … is still being recorded.', breakIds: [1] },
  ])
  expect(problemGroups([])).toEqual([])
})
