import { expect, it } from 'vitest'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { pullEvents } from '#exchange/calendar/pullEvents.ts'

const pull: PullSummary = {
  ...{ studyId: 1, gluedOn: '2031-08-31', ageMonths: 6, key: '1-0-6', sequence: 3, studyTitle: 'Loft', demo: false },
  ...{ plannedOn: '2032-02-29', dueOn: '2032-03-05', windowDays: 14, state: 'skipped', added: false },
  ...{ blocks: { planned: 12, waiting: 12, broken: 0, lost: 0 }, decision: null },
}

it('keeps key, sequence and day of a pull, and tells archives apart', () => {
  const [event] = pullEvents([pull], '3f9c')
  expect(event).toMatchObject({ uid: '3f9c-1-0-6@breakledger', sequence: 3, dueOn: '2032-03-05', skipped: true })
  expect(pullEvents([pull], 'aaaa')[0]!.uid).not.toBe(event!.uid)
})
