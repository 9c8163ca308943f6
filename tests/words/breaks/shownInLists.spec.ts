import { expect, test } from 'vitest'
import {
  breakFiguresToFind,
  breakWordsToFind,
  everyBreakWord,
  figureToFind,
  type ShownBreak,
} from '#words/breaks/shownInLists.ts'
import { instantWords } from '#words/units/times.ts'

const startedAt = '2031-05-02T09:30:00.000Z'

test('a break can be found by the words of its row and of its events', () => {
  const shown: ShownBreak = {
    ...{ startedAt, outcome: 'break', ending: 'complete', setAside: null, simulated: true },
    flags: ['gap-at-peak', 'uncalibrated'],
    events: ['pop-in', 'final-drop'],
    ...{ peakN: 15_939.1, strengthMPa: 9.87, woodFailurePercent: 40 },
  }
  const words = `${breakWordsToFind(shown)} ${breakFiguresToFind(shown)}`
  for (const part of [instantWords(startedAt), 'broke', 'gap at peak', 'uncalibrated', 'Pop-in', 'simulated'])
    expect(words).toContain(part)
  expect(words).toContain('peak 15939 N')
  expect(words).toContain('strength 9.87 MPa')
  expect(words).toContain('wood failure 40 %')
})

test('a figure is written in both systems of units, without thin spaces', () => {
  expect(figureToFind('gap', 0, 'length')).toBe('gap 0 mm gap 0 in')
  expect(figureToFind('peak', null, 'force')).toBe('')
})

test('every word that a break can be found by is among all of them', () => {
  const all = everyBreakWord()
  for (const outcome of ['break', 'unloading', 'none', null] as const)
    for (const setAside of ['slipped', null])
      for (const simulated of [true, false]) {
        const shown = { startedAt: '', outcome, ending: 'interrupted' as const, setAside, flags: ['clipped' as const] }
        const words = breakWordsToFind({
          ...{ ...shown, events: ['pop-in'], peakN: 1, strengthMPa: 1, woodFailurePercent: 5, simulated },
        })
        for (const word of words.split(' ')) expect(all).toContain(word)
      }
})
