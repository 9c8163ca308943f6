import { expect, it } from 'vitest'
import type { ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import { decidedWords, dialogWords, meaningWords, titleWords } from '#words/reevaluation/decisionWords.ts'

const summary = (change: Partial<ReevaluationSummary> = {}): ReevaluationSummary => ({
  reevaluationId: 1,
  begunAt: '2026-06-02T09:15:00.000Z',
  by: 'bench 1',
  method: 'break-detection 2',
  calibrationId: null,
  settings: {},
  breaks: 12,
  evaluated: 12,
  end: { reevaluationId: 1, endedAt: '2026-06-02T09:31:00.000Z', ending: 'complete', problems: [] },
  decisions: [],
  ...change,
})
const adopted = {
  reevaluationDecisionId: 1,
  reevaluationId: 1,
  recordedAt: '2026-06-03T09:31:00.000Z',
  by: 'bench 1',
  reason: 'looked through',
  kind: 'adopted',
} as const

it('says that results wait, what adopting does, and that it can be taken back', () => {
  const words = meaningWords(summary())
  expect(words).toContain('do not count yet')
  expect(words).toContain('all 12 results in force by one recorded decision')
  expect(words).toContain('take back at any time')
  expect(words).toContain('stay in the archive')
  expect(meaningWords(summary({ breaks: 1, evaluated: 1 }))).toContain('puts this result in force')
})

it('says that adopted results count, and that none can be adopted where there is none', () => {
  expect(meaningWords(summary({ decisions: [adopted] }))).toContain('count wherever the breaks are used')
  expect(meaningWords(summary({ evaluated: 0 }))).toContain('nothing to adopt')
})

it('says how far one came that ended early, and why there is nothing to adopt', () => {
  const ended = (ending: 'complete' | 'cancelled' | 'cut-short', evaluated: number) =>
    summary({ evaluated, end: { reevaluationId: 1, endedAt: '2026-06-02T09:16:00.000Z', ending, problems: [] } })
  expect(titleWords(ended('complete', 12))).toBe('12 breaks evaluated again')
  expect(titleWords(ended('cancelled', 5))).toBe('5 of 12 breaks evaluated again')
  expect(titleWords(summary({ end: null }))).toBe('Evaluating 12 breaks again')
  expect(meaningWords(ended('cancelled', 0))).toBe(
    'Somebody stopped it before a break was evaluated, so there is nothing to adopt.',
  )
  expect(meaningWords(ended('cut-short', 0))).toMatch(/^It ended before a break was evaluated/)
  expect(meaningWords(ended('complete', 0))).toMatch(/^No break could be evaluated/)
})

it('names each decision for what it did when it was made', () => {
  const dropped = { ...adopted, kind: 'dropped' as const }
  const decisions = [dropped, adopted, dropped, adopted]
  expect(decisions.map((_, index) => decidedWords(decisions, index))).toEqual([
    'Not adopted',
    'Adopted',
    'Taken out of force',
    'Adopted',
  ])
})

it('asks otherwise for leaving results than for taking them out of force', () => {
  expect(dialogWords('dropped', summary()).title).toBe('Do not adopt')
  expect(dialogWords('dropped', summary({ decisions: [adopted] })).title).toBe('Take out of force again')
  expect(dialogWords('adopted', summary()).title).toBe('Adopt the results of 12 breaks')
})
