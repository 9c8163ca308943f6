import { expect, it } from 'vitest'
import { typedResultDecision } from '#contract/specimens/typedResult.ts'

const spoken = {
  ...{ typedResultDecisionId: 1, typedResultId: 1, recordedAt: '2031-05-02T09:30:00.000Z' },
  ...{ by: 'Ada Thole', reason: 'misread' },
}
const holds = (more: object) => typedResultDecision.safeParse({ ...spoken, ...more }).success

it('a word on a result without a curve gives a cause only where that is set aside', () => {
  expect(holds({ kind: 'set-aside', cause: 'wrong-block' })).toBe(true)
  expect(holds({ kind: 'set-aside' })).toBe(true)
  expect(holds({ kind: 'taken-back' })).toBe(true)
  expect(holds({ kind: 'taken-back', cause: 'wrong-block' })).toBe(false)
})
