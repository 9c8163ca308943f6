import { describe, expect, it } from 'vitest'
import { endedSentence, flagListWords, overruledWords, setAsideWords } from '#renderer/pages/wording.ts'

describe('flagListWords', () => {
  const flags = ['uncalibrated', 'glitch', 'peak-picked'] as const

  it('says a person’s word on the peak before all else', () => {
    expect(flagListWords({ flags: [...flags], verification: null })).toBe(
      'peak picked by hand, uncalibrated, spike left out',
    )
  })
  it('counts what there is no room for', () => {
    expect(flagListWords({ flags: [...flags], verification: null }, 2)).toBe('peak picked by hand, uncalibrated, +1')
    expect(flagListWords({ flags: ['uncalibrated', 'glitch'], verification: null }, 2)).toBe(
      'uncalibrated, spike left out',
    )
  })
})

describe('overruledWords', () => {
  it('says whose word it is and why', () => {
    const word = { by: 'bench 1', reason: 'seen', recordedAt: '2031-04-06T08:00:00.000Z', timeS: 3, foundPeakN: 20 }
    expect(overruledWords({ kind: 'premature-failure', ...word })).toBe('premature failure by bench 1: seen')
  })
})

describe('setAsideWords', () => {
  it('says what happened before the reason, where it was asked and is known', () => {
    expect(setAsideWords({ setAside: 'seen', setAsideCause: 'wrong-block' })).toBe('wrong block; seen')
    expect(setAsideWords({ setAside: 'seen', setAsideCause: 'other' })).toBe('seen')
    expect(setAsideWords({ setAside: 'seen', setAsideCause: null })).toBe('seen')
  })
})

it('closes what a person wrote with one full stop', () => {
  expect(['cracked early', 'cracked early.', 'did it slip? '].map(endedSentence)).toEqual([
    'cracked early.',
    'cracked early.',
    'did it slip?',
  ])
})
