import { describe, expect, it } from 'vitest'
import { pullDecision } from '#contract/programme/pull.ts'
import { studyFields } from '#contract/programme/study.ts'
import { type BrokenBlock, pullsOfBreaks } from '#domain/programme/calendar/pullOfBreak.ts'
import type { PullSource } from '#domain/programme/calendar/studyPulls.ts'

const fields = studyFields.parse({
  ...{ title: 'Loft and bilge', adhesives: ['casein C1'], jointTypes: ['lap'], gapsMm: [0], exposures: ['loft'] },
  ...{ agesMonths: [0, 1, 6], blocksPerCell: 3, windowDays: 20, startOn: null, seed: 1 },
})
const blocks = { planned: 3, waiting: 3, broken: 0, lost: 0 }
const gluedOn = '2031-08-31'
const study = { studyId: 4, revision: 1, recordedAt: '2031-01-01T00:00:00.000Z', by: '', reason: '', fields }
const source: PullSource = {
  study,
  counts: [0, 1, 6, null].map((ageMonths) => ({ gluedOn, ageMonths, ...blocks })),
  ...{ unglued: [], decisions: [], spares: [], corrections: 0, glueUps: [] },
}
const decided = (change: object) =>
  pullDecision.parse({
    ...{ pullDecisionId: 1, recordedAt: '2031-09-01T00:00:00.000Z', by: 'bench', reason: 'away', studyId: 4 },
    ...{ gluedOn: null, ageMonths: 6, kind: 'moved', dueOn: null, blocksPerSeries: null },
    ...change,
  })
const pullOf = (given: Partial<BrokenBlock>, decisions: PullSource['decisions'] = []) =>
  pullsOfBreaks([{ ...source, decisions }])({ studyId: 4, gluedOn, ageMonths: 6, brokenOn: '2032-02-29', ...given })

// Due on 31 August and 30 September 2031 and on 29 February 2032.
describe('the pull in which a block was broken', () => {
  it('is its own within the days of the window, early and late, and none beyond', () => {
    const on = (brokenOn: string) => pullOf({ brokenOn })
    expect(['2032-02-09', '2032-02-29', '2032-03-20'].map(on)).toEqual([6, 6, 6])
    expect(['2032-02-08', '2032-03-21'].map(on)).toEqual([null, null])
  })

  it('takes an instant for its day', () => {
    expect(pullOf({ brokenOn: '2032-03-20T23:59:00.000Z' })).toBe(6)
  })

  it('is its own where windows overlap, though another is nearer', () => {
    const brokenOn = '2031-09-19'
    expect(pullOf({ ageMonths: 0, brokenOn })).toBe(0)
    expect(pullOf({ ageMonths: 1, brokenOn })).toBe(1)
  })

  it('is for a spare, and for a block that was broken at another age than planned, the nearest', () => {
    expect(pullOf({ ageMonths: null, brokenOn: '2031-09-19' })).toBe(1)
    expect(pullOf({ ageMonths: 6, brokenOn: '2031-09-02' })).toBe(0)
  })

  it('has its window about the day to which it was moved, and none where it was skipped', () => {
    const moved = [decided({ dueOn: '2032-04-15' })]
    expect(pullOf({ brokenOn: '2032-04-20' }, moved)).toBe(6)
    expect(pullOf({ brokenOn: '2032-02-29' }, moved)).toBeNull()
    expect(pullOf({}, [decided({ kind: 'skipped' })])).toBeNull()
  })

  it('is none of another study or another day of glue-up', () => {
    expect(pullOf({ studyId: 5 })).toBeNull()
    expect(pullOf({ gluedOn: '2031-09-01' })).toBeNull()
  })
})
