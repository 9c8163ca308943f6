import { describe, expect, it } from 'vitest'
import { outcomeWord } from '#words/breaks/outcomeWords.ts'

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
