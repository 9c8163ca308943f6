import { describe, expect, it } from 'vitest'
import type { JudgedAspect } from '#domain/signal/practice/judgeLoading.ts'
import { judgedFigures, judgedSentence } from '#words/breaks/judgementWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

describe('judgedFigures', () => {
  it('writes the figure beside its limits', () => {
    const line = { aspect: 'time-to-failure', value: 7.06, limits: { least: 5, most: 60 } } as const
    expect(judgedFigures(line, quantitiesIn('SI'))).toEqual({
      name: 'Time to failure',
      figures: '7.06 s, limits: 5 to 60 s',
    })
  })
  it('writes figure and limits in the units shown', () => {
    // 1 in = 25.4 mm exactly
    const line = { aspect: 'speed', value: 50.8, limits: { least: 25.4, most: null } } as const
    expect(judgedFigures(line, quantitiesIn('US')).figures).toBe('2.00 in/min, limits: at least 1 in/min')
  })
  it('writes the limits alone where the figure is not known', () => {
    const line = { aspect: 'sampling-bound', value: null, limits: { least: null, most: 1 } } as const
    expect(judgedFigures(line, quantitiesIn('SI')).figures).toBe('limits: at most 1 %')
  })
})

describe('judgedSentence', () => {
  const line: JudgedAspect = {
    aspect: 'rate',
    value: 10,
    limits: { least: 5, most: 20 },
    verdict: 'inside',
    side: null,
    unknownBecause: null,
    cure: null,
  }
  const outside = { ...line, verdict: 'outside' } as const

  it('says which way to go where a figure lies outside', () => {
    expect(judgedSentence(line)).toBe('The load rose as fast as this practice wants.')
    expect(judgedSentence({ ...outside, side: 'above' })).toContain('load more slowly')
    expect(judgedSentence({ ...outside, side: 'below', aspect: 'time-to-failure' })).toContain('sooner')
  })
  it('says what to do about what is not known', () => {
    const unknown = { ...line, value: null, verdict: 'not-known' } as const
    expect(judgedSentence({ ...unknown, unknownBecause: 'no-speed' })).toMatch(/Measure it .* evaluate the break again/)
    expect(judgedSentence({ ...unknown, unknownBecause: 'older-method' })).toContain('evaluate the break again')
    expect(judgedSentence({ ...unknown, unknownBecause: 'no-area' })).toContain('bonded area')
  })
  it('names the sample rate that would bring the sampling bound inside, or the cable where samples are missing', () => {
    const bound = { ...outside, aspect: 'sampling-bound', side: 'above' } as const
    expect(judgedSentence({ ...bound, cure: { kind: 'sample-faster', sampleRateHz: 80 } })).toMatch(
      /sample at 80 Hz or faster, or load more slowly\.$/,
    )
    expect(judgedSentence({ ...bound, cure: { kind: 'sample-faster', sampleRateHz: null } })).toContain('sample faster')
    expect(judgedSentence({ ...bound, cure: { kind: 'close-the-gap' } })).toContain('check cable')
  })
})
