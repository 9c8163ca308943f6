import { describe, expect, it } from 'vitest'
import { overruledWords, setAsideWords } from '#words/breaks/decisionWords.ts'

describe('overruledWords', () => {
  it('says whose word it is and why', () => {
    const word = { by: 'bench 1', reason: 'seen', recordedAt: '2031-04-06T08:00:00.000Z', timeS: 3, foundPeakN: 20 }
    expect(overruledWords({ kind: 'premature-failure', ...word })).toBe('premature failure by bench 1: seen')
  })
})

describe('setAsideWords', () => {
  it('says what happened before the reason, where it was asked and is known', () => {
    expect(setAsideWords({ setAside: 'seen', setAsideCause: 'wrong-block' })).toBe('wrong specimen; seen')
    expect(setAsideWords({ setAside: 'seen', setAsideCause: 'other' })).toBe('seen')
    expect(setAsideWords({ setAside: 'seen', setAsideCause: null })).toBe('seen')
  })
})
