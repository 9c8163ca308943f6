import { expect, it } from 'vitest'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import {
  addressOfPulls,
  breakAddress,
  isOpenNow,
  pullsInAddress,
  pullsToBreak,
} from '#renderer/pages/programme/breaking/pullsToBreak.ts'
import { routeOf } from '#renderer/routes/route.ts'
import { madePull } from './madePull.ts'

const pulls: readonly PullSummary[] = [
  madePull({ ageMonths: 24, state: 'planned', dueOn: '2033-03-01' }),
  madePull({ ageMonths: 0, state: 'done', blocks: { planned: 4, waiting: 0, broken: 4, lost: 0 } }),
  madePull({ ageMonths: 1, state: 'missed', dueOn: '2031-04-01' }),
  madePull({ ageMonths: 3, key: '1-0-3' }),
  madePull({ ageMonths: 6, gluedOn: null }),
  madePull({ ageMonths: 9, state: 'skipped' }),
  madePull({ ageMonths: 2, key: '1-0-2', state: 'late', dueOn: '2031-05-28' }),
]

it('offers pulls of which glued blocks wait, what is due first', () =>
  expect(pullsToBreak(pulls).map(({ ageMonths }) => ageMonths)).toEqual([2, 3, 1, 24]))

it('names in the address of a new session the pulls that it is for, as far as they can be broken', () => {
  const address = breakAddress(1, pulls.filter(isOpenNow))
  expect(address).toBe('#/breaking/new/1?pulls=1-0-2,1-0-3')
  expect(routeOf(address)).toEqual({ page: 'new-breaking', studyId: 1 })
  expect(pullsInAddress(address)).toEqual(['1-0-2', '1-0-3'])
  expect(
    breakAddress(null, [madePull({ state: 'done', blocks: { planned: 4, waiting: 0, broken: 4, lost: 0 } })]),
  ).toBe('#/breaking/new')
})

it('finds every key again that it wrote, and none where none is written', () => {
  const keys = ['1-0-3', '12-1-0']
  expect(pullsInAddress(`#/breaking/new${addressOfPulls(keys)}`)).toEqual(keys)
  expect(addressOfPulls([])).toBe('')
  for (const hash of ['', '#/breaking/new', '#/breaking/new?text=epoxy']) expect(pullsInAddress(hash)).toEqual([])
})
