import { expect, it } from 'vitest'
import { eventAsWords, flagsAsWords, gainedAndLost, listWords } from '#renderer/pages/reevaluation/changeWords.ts'

it('tells what came and what went, each as often as it does', () => {
  expect(gainedAndLost(['seating', 'pop-in'], ['seating', 'plateau', 'plateau'])).toEqual({
    gained: ['plateau', 'plateau'],
    lost: ['pop-in'],
  })
  expect(gainedAndLost(['glitch', 'glitch'], ['glitch'])).toEqual({ gained: [], lost: ['glitch'] })
  expect(gainedAndLost(['a', 'b'], ['b', 'a'])).toEqual({ gained: [], lost: [] })
})

it.each([
  ['pop-in', 'Pop-in'],
  ['final-drop', 'Final drop'],
  ['stick-slip 5', 'Stick-slip (5)'],
  ['something new 3', 'something new 3'],
])('names the event %s', (event, words) => expect(eventAsWords(event)).toBe(words))

it('says none of an empty list', () => {
  expect(listWords([])).toBe('none')
  expect(listWords(flagsAsWords(['gap-at-peak', 'clipped']))).toBe('gap at peak, clipped')
})
