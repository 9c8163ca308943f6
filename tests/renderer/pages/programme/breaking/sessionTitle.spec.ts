import { expect, it } from 'vitest'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { pullKey, pullsToBreak, sessionTitle } from '#renderer/pages/programme/breaking/sessionTitle.ts'

const pull = (change: Partial<PullSummary>): PullSummary => ({
  ...{ studyId: 1, gluedOn: '2031-03-01', ageMonths: 3, key: 'k', sequence: 0, studyTitle: 'Loft', demo: false },
  ...{ plannedOn: '2031-06-01', dueOn: '2031-06-01', windowDays: 7, state: 'due', added: false, decision: null },
  blocks: { planned: 4, waiting: 4, broken: 0, lost: 0 },
  ...change,
})

it('calls a session by its pulls, each name once, and by what is added to them', () => {
  expect(sessionTitle([pull({}), pull({ gluedOn: '2031-03-08' })], 0)).toBe('Loft, 3 months')
  expect(sessionTitle([pull({}), pull({ ageMonths: 12 })], 2)).toBe('Loft, 3 months; Loft, 1 year; 2 more specimens')
  expect(sessionTitle([], 1)).toBe('1 specimen')
  expect(
    sessionTitle(
      Array.from({ length: 40 }, (_, at) => pull({ ageMonths: at })),
      0,
    ),
  ).toHaveLength(199)
})

it('offers pulls of which glued blocks wait, what is due first', () => {
  const pulls = [
    pull({ ageMonths: 24, state: 'planned', dueOn: '2033-03-01' }),
    pull({ ageMonths: 0, state: 'done', blocks: { planned: 4, waiting: 0, broken: 4, lost: 0 } }),
    pull({ ageMonths: 1, state: 'missed', dueOn: '2031-04-01' }),
    pull({ ageMonths: 3 }),
    pull({ ageMonths: 6, gluedOn: null }),
    pull({ ageMonths: 9, state: 'skipped' }),
    pull({ ageMonths: 2, state: 'late', dueOn: '2031-05-28' }),
  ]
  expect(pullsToBreak(pulls).map(({ ageMonths }) => ageMonths)).toEqual([2, 3, 1, 24])
})

it('tells pulls apart by study, day of glue-up and age', () =>
  expect(new Set([pull({}), pull({ ageMonths: 6 }), pull({ studyId: 2 })].map(pullKey)).size).toBe(3))
