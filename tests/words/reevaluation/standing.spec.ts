import { expect, it } from 'vitest'
import type { ReevaluationDecision, ReevaluationEnd } from '#contract/reevaluation/reevaluation.ts'
import { standingOf, standingWords } from '#words/reevaluation/standing.ts'

const end = (ending: ReevaluationEnd['ending']): ReevaluationEnd => ({
  reevaluationId: 1,
  endedAt: '2026-06-02T09:31:00.000Z',
  ending,
  problems: [],
})
const decisions = (...kinds: ReevaluationDecision['kind'][]): ReevaluationDecision[] =>
  kinds.map((kind, index) => ({
    reevaluationDecisionId: index + 1,
    reevaluationId: 1,
    recordedAt: '2026-06-03T09:31:00.000Z',
    by: 'bench 1',
    reason: 'looked through',
    kind,
  }))

it.each([
  ['running', null, []],
  ['waiting', end('complete'), []],
  ['cancelled', end('cancelled'), []],
  ['cut-short', end('cut-short'), []],
  ['adopted', end('complete'), decisions('adopted')],
  ['dropped', end('complete'), decisions('dropped')],
  ['taken-out', end('complete'), decisions('adopted', 'dropped')],
  ['adopted', end('complete'), decisions('adopted', 'dropped', 'adopted')],
  ['adopted', end('cancelled'), decisions('dropped', 'adopted')],
] as const)('is %s', (standing, ended, made) =>
  expect(standingOf({ end: ended, decisions: [...made], evaluated: 3 })).toBe(standing),
)

it('has nothing to wait for without a result', () =>
  expect(standingOf({ end: end('complete'), decisions: [], evaluated: 0 })).toBe('nothing'))

it('says how far a running one is, and of the others what became of them', () => {
  const summary = { decisions: [], breaks: 5000, evaluated: 312 }
  expect(standingWords({ ...summary, end: null })).toBe('running: 312 of 5000')
  expect(standingWords({ ...summary, end: end('complete') })).toBe('waiting for your decision')
})
