import { describe, expect, it } from 'vitest'
import {
  curveAbout,
  curveMarkWords,
  curveTime,
  eventMarkName,
  loadCurveTitle,
  loadCurveWords,
  restWords,
  seatedLineWords,
} from '#words/breaks/curveWords.ts'
import { createScriptedHost } from '../../fakes/scripted/scriptedHost.ts'

it('says of which block a curve is, what its load rests on and how its samples are known', () => {
  const host = createScriptedHost()
  host.addBreak(3480, {}, {})
  const record = host.breaks[0]!
  const { number, adhesive } = record.summary
  expect(curveAbout(record)).toMatch(
    new RegExp(`^Specimen ${number} ${adhesive}, (calibration \\d+|no calibration)\\. Curve SHA-256 [0-9a-f]{16}\\.$`),
  )
  const running = { ...record, summary: { ...record.summary, number: null }, end: null }
  expect(curveAbout(running)).toMatch(/^No specimen, [a-z\d ]+\.$/)
})

describe('words on a load curve', () => {
  const marks = [
    { label: 'peak 90 N', timeS: 9 },
    { label: 'start of loading', timeS: 1.234 },
  ]
  it('name it by its break', () => {
    expect(loadCurveTitle({ breakId: 7, startedAt: '2031-05-02T09:30:00.000Z' })).toMatch(
      /^Load curve of break 7, .*2031/,
    )
  })
  it('tell its marks in order of time', () => {
    expect(loadCurveWords({ fromS: 0, toS: 10, marks, gaps: 0 })).toBe(
      'Load from 0.00 s to 10.00 s. In order: start of loading at 1.23 s; peak 90 N at 9.00 s.',
    )
  })
  it('say where nothing is marked and where samples are missing', () => {
    expect(loadCurveWords({ fromS: 0, toS: 1, marks: [], gaps: 2 })).toBe(
      'Load from 0.00 s to 1.00 s. Nothing is marked. Samples are missing in 2 places.',
    )
  })
  it('give a mark and its time', () => {
    expect(curveMarkWords(marks[0]!)).toBe('peak 90 N, 9.00 s')
    expect(curveTime(-0.001)).toBe('0.00 s')
  })
  it('name an event by what was seen, seating by its end', () => {
    expect(eventMarkName('seating')).toBe('seated')
    expect(eventMarkName('pop-in')).toBe('pop-in')
    expect(eventMarkName('gap')).toBe('missing samples')
  })
  it('name the level at rest, with the noise where it is known', () => {
    expect(restWords('0.4 N')).toBe('zero, noise SD 0.4 N')
    expect(restWords(null)).toBe('zero')
  })
  it('tell where the line through the straight part begins', () => {
    expect(seatedLineWords(0.5)).toBe('through the straight part, from 0.500 s')
  })
})
