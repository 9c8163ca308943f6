import { describe, expect, it } from 'vitest'
import { judgedWords } from '#renderer/pages/breaks/record/loading/judgedWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

describe('judgedWords', () => {
  it('writes the figure beside its limits', () => {
    const line = { aspect: 'time-to-failure', value: 7.06, limits: { least: 5, most: 60 } } as const
    expect(judgedWords(line, quantitiesIn('SI'))).toEqual({
      name: 'Time to failure',
      figures: '7.06 s, wanted: 5 to 60 s',
    })
  })
  it('writes figure and limits in the units shown', () => {
    // 1 in = 25.4 mm exactly
    const line = { aspect: 'speed', value: 50.8, limits: { least: 25.4, most: null } } as const
    expect(judgedWords(line, quantitiesIn('US')).figures).toBe('2.00 in/min, wanted: at least 1 in/min')
  })
  it('writes the limits alone where the figure is not known', () => {
    const line = { aspect: 'sampling-bound', value: null, limits: { least: null, most: 1 } } as const
    expect(judgedWords(line, quantitiesIn('SI')).figures).toBe('wanted: at most 1 %')
  })
})
