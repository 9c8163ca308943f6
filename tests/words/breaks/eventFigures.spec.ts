import { describe, expect, it } from 'vitest'
import { durationWords, eventFigures, eventTimeWords } from '#words/breaks/eventFigures.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { madeEvent } from '../../fakes/madeEvents.ts'

const { force } = quantitiesIn('SI')

describe('eventFigures', () => {
  it('writes every figure of stick-slip by its name', () => {
    const event = madeEvent({
      ...{ kind: 'stick-slip', fromN: 2934, percentOfPeak: 61, dropN: 265.25, dropPercent: 8.6, cycles: 5 },
      ...{ meanDropN: 226, leastDropN: 181, periodS: 0.3 },
    })
    expect(eventFigures(event, force)).toEqual([
      ['Load', '2934\u00a0N'],
      ['Of the peak', '61.0 %'],
      ['Largest drop', '265.3\u00a0N (8.6 %)'],
      ['Mean drop', '226.0\u00a0N'],
      ['Smallest drop', '181.0\u00a0N'],
      ['Cycles', '5'],
      ['Period', '0.30\u00a0s'],
    ])
  })
  it('leaves out what the event does not have, and keeps the percents of a curve without a scale', () => {
    expect(eventFigures(madeEvent({ kind: 'glitch' }), force)).toEqual([])
    expect(eventFigures(madeEvent({ kind: 'pop-in', dropPercent: 12 }), force)).toEqual([['Drop', '12.0 %']])
  })
  it('says how the load fell in the end', () => {
    expect(eventFigures(madeEvent({ kind: 'final-drop', manner: 'brittle' }), force)).toEqual([
      ['How it broke', 'all at once'],
    ])
  })
})

describe('eventTimeWords', () => {
  it('says an instant, or from when to when and how long', () => {
    expect(eventTimeWords({ startTimeS: 8.2, endTimeS: 8.2 })).toBe('at 8.200\u00a0s')
    expect(eventTimeWords({ startTimeS: 6.4, endTimeS: 7.9 })).toBe('6.400 to 7.900\u00a0s, 1.50\u00a0s')
  })
})

describe('durationWords', () => {
  it('counts milliseconds below a tenth of a second', () => {
    expect([0.0125, 0.3, 12.34].map(durationWords)).toEqual(['12.5\u00a0ms', '0.30\u00a0s', '12.3\u00a0s'])
  })
})
