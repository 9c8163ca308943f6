import type { PullSummary } from '#contract/programme/pullProcedures.ts'

/** A pull of the third month that is due, with four blocks waiting. */
export const madePull = (change: Partial<PullSummary> = {}): PullSummary => ({
  ...{ studyId: 1, gluedOn: '2031-03-01', ageMonths: 3, key: 'k', sequence: 0, studyTitle: 'Loft', demo: false },
  ...{ plannedOn: '2031-06-01', dueOn: '2031-06-01', windowDays: 7, state: 'due', added: false, decision: null },
  blocks: { planned: 4, waiting: 4, broken: 0, lost: 0 },
  ...change,
})
