import { describe, expect, it } from 'vitest'
import { decision } from '#contract/breaks/decision.ts'

const spoken = {
  decisionId: 1,
  breakId: 1,
  recordedAt: '2031-05-02T09:30:00.000Z',
  by: 'bench 1',
  reason: 'seen on the curve',
  specimenId: null,
}
const sample = { timeS: 4.2, reading: 120_345 }
const holds = (more: object) => decision.safeParse({ ...spoken, ...more }).success

describe('a word on a break', () => {
  it.each(['peak-picked', 'premature-failure'])('of the kind %s names a sample', (kind) => {
    expect(holds({ kind, sample })).toBe(true)
    expect(holds({ kind })).toBe(false)
  })
  it.each(['set-aside', 'taken-back', 'reassigned', 'peak-as-found'])('of the kind %s names none', (kind) => {
    expect(holds({ kind })).toBe(true)
    expect(holds({ kind, sample })).toBe(false)
  })
  it('gives a cause only where a break is set aside', () => {
    expect(holds({ kind: 'set-aside', cause: 'wrong-block' })).toBe(true)
    expect(holds({ kind: 'taken-back', cause: 'wrong-block' })).toBe(false)
  })
  it('is signed and gives a reason', () => {
    expect(holds({ kind: 'taken-back', by: '' })).toBe(false)
    expect(holds({ kind: 'taken-back', reason: '' })).toBe(false)
  })
})
