import { expect, it } from 'vitest'
import { eventAsWords, flagsAsWords, listWords, standingWords } from '#words/reevaluation/changeWords.ts'

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

it.each([
  [{ overruled: 0, setAside: 0 }, null],
  [{ overruled: 1, setAside: 0 }, '1 peak is as a person said: that stays so, whatever is adopted.'],
  [{ overruled: 0, setAside: 2 }, '2 breaks are set aside: that stays so, whatever is adopted.'],
  [
    { overruled: 3, setAside: 1 },
    '3 peaks are as a person said, 1 break is set aside: that stays so, whatever is adopted.',
  ],
])('says what stays as a person said: %o', (figures, words) => expect(standingWords(figures)).toBe(words))
