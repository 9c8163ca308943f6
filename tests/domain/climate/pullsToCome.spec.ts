import { describe, expect, it } from 'vitest'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { pullsToCome, type WaitingBlocks } from '#domain/climate/pullsToCome.ts'
import { traitsKey } from '#domain/programme/study/plannedAges.ts'

const series = { adhesive: 'casein C1', jointType: 'lap', bondLineGapMm: 0, exposure: 'loft' }
const waiting = (ageMonths: number | null, change: Partial<WaitingBlocks> = {}): WaitingBlocks => ({
  ...{ ...series, studyId: 1, gluedOn: '2026-04-20', ageMonths },
  ...change,
})
const pull = (ageMonths: number, change: Partial<PullSummary> = {}): PullSummary => ({
  ...{ studyId: 1, gluedOn: '2026-04-20', ageMonths, key: '', sequence: 0, studyTitle: '', demo: false, added: false },
  ...{ plannedOn: '2027-04-20', dueOn: '2027-04-20', windowDays: 7, state: 'planned', decision: null },
  blocks: { planned: 1, waiting: 1, broken: 0, lost: 0 },
  ...change,
})
const key = traitsKey(series)
const dueS = Date.UTC(2027, 3, 20) / 1000

describe('the pulls to come of a store', () => {
  it('are those of blocks that wait there, the nearest first', () => {
    const pulls = [pull(24, { dueOn: '2028-04-20' }), pull(12), pull(36)]
    expect(pullsToCome([waiting(24), waiting(12)], pulls).map((one) => [one.series, one.ageMonths])).toEqual([
      [key, 12],
      [key, 24],
    ])
    expect(pullsToCome([waiting(12)], pulls)).toEqual([{ series: key, ageMonths: 12, dueS }])
  })

  it('are found with the series of the same blocks, whatever the case of their names', () => {
    const upper = { adhesive: 'Casein C1', exposure: 'Loft' }
    expect(pullsToCome([waiting(12, upper)], [pull(12)])).toEqual([{ series: key, ageMonths: 12, dueS }])
  })

  it('are not those of another study or day of glue-up, nor what was skipped, missed or done', () => {
    expect(pullsToCome([waiting(12, { studyId: 2 }), waiting(12, { gluedOn: '2026-04-21' })], [pull(12)])).toEqual([])
    for (const state of ['skipped', 'missed', 'done'] as const)
      expect(pullsToCome([waiting(12)], [pull(12, { state })])).toEqual([])
  })

  it('take spares where they were added', () => {
    expect(pullsToCome([waiting(null)], [pull(12, { added: true })])).toEqual([{ series: key, ageMonths: 12, dueS }])
    expect(pullsToCome([waiting(null)], [pull(12)])).toEqual([])
  })
})
