import { describe, expect, it } from 'vitest'
import { endedSentence, flagListWords, outcomeWord, overruledWords, setAsideWords } from '#words/wording.ts'

describe('flagListWords', () => {
  const flags = ['uncalibrated', 'glitch', 'peak-picked'] as const

  it('says a person’s word on the peak before all else', () => {
    expect(flagListWords({ flags: [...flags], verification: null })).toBe(
      'peak picked by hand, uncalibrated, spike left out',
    )
  })
  it('says once that samples are missing where the peak is', () => {
    expect(flagListWords({ flags: ['gap', 'gap-at-peak', 'uncalibrated'], verification: null }, 2)).toBe(
      'gap at peak, uncalibrated',
    )
    expect(flagListWords({ flags: ['gap'], verification: null })).toBe('gap')
  })
  it('counts what there is no room for', () => {
    expect(flagListWords({ flags: [...flags], verification: null }, 2)).toBe('peak picked by hand, uncalibrated, +1')
    expect(flagListWords({ flags: ['uncalibrated', 'glitch'], verification: null }, 2)).toBe(
      'uncalibrated, spike left out',
    )
  })
})

describe('outcomeWord', () => {
  const word = (outcome: 'break' | 'unloading' | 'none', ending: 'complete' | 'interrupted' | 'recovered') =>
    outcomeWord({ outcome, ending, setAside: null })

  it('says of a load that went down that it did, and of one that nobody saw going down that the capture ended', () => {
    expect(word('unloading', 'complete')).toBe('unloaded')
    expect(word('unloading', 'interrupted')).toBe('cut short')
    expect(word('unloading', 'recovered')).toBe('cut short')
  })
  it('calls a break a break, however its capture ended', () => {
    expect(word('break', 'recovered')).toBe('broke')
    expect(word('none', 'interrupted')).toBe('not loaded')
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
