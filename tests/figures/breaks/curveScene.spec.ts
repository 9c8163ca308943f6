import { describe, expect, it } from 'vitest'
import type { OverruledPeak } from '#contract/breaks/decision.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { type SceneParts, sceneOf, seatedLineOf } from '#figures/breaks/curveScene.ts'
import { madeEvent } from '#tests/fakes/madeEvents.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'

const curve = { timeS: Float64Array.of(0, 1, 2, 3), force: Float64Array.of(0, 10, 20, 5) }
const popIn = madeEvent({ kind: 'pop-in', startTimeS: 1, endTimeS: 1.1, dropN: 2, dropPercent: 20 })
const finalDrop = madeEvent({ kind: 'final-drop', startTimeS: 2, endTimeS: 3 })

function parts(change: Partial<EvaluationResult> = {}, more: Partial<SceneParts> = {}): SceneParts {
  const host = createScriptedHost()
  host.addBreak(
    20,
    {},
    { peakTimeS: 2, onsetTimeS: 0.9, breakTimeS: 3, noiseN: 0.4, events: [popIn, finalDrop], ...change },
  )
  const { result } = host.breaks[0]!.evaluations[0]!
  return {
    ...{ result, curve, word: null, chosen: null, seatedLine: false, capacityN: null },
    force: (forceN) => `${forceN} N`,
    ...more,
  }
}

const word = (kind: OverruledPeak['kind']) => ({
  overruled: { kind, by: 'bench 1', reason: 'seen', recordedAt: '2031-04-06T08:00:00.000Z', timeS: 1, foundPeakN: 20 },
  peakN: 10,
})

describe('sceneOf', () => {
  it('marks peak, start, break and events, each with words and a shape', () => {
    expect(sceneOf(parts()).marks.map(({ label, shape, timeS, value }) => ({ label, shape, timeS, value }))).toEqual([
      { timeS: 1, value: 10, label: 'pop-in', shape: 'event' },
      { timeS: 2, value: 20, label: 'peak 20 N', shape: 'peak' },
      { timeS: 0.9, value: 10, label: 'start of loading', shape: 'onset' },
      { timeS: 3, value: 5, label: 'break', shape: 'break' },
    ])
  })

  it('shades the stretch of every event that has one, and the chosen one apart', () => {
    expect(sceneOf(parts({}, { chosen: 1 })).spans).toEqual([
      { fromS: 1, toS: 1.1, chosen: false },
      { fromS: 2, toS: 3, chosen: true },
    ])
  })

  it('names the chosen event before all others, a final drop too', () => {
    expect(sceneOf(parts({}, { chosen: 1 })).marks[0]).toMatchObject({ label: 'final drop', chosen: true })
  })

  it('marks a final drop itself where no break was found', () => {
    expect(sceneOf(parts({ breakTimeS: null })).marks.map(({ label }) => label)).toContain('final drop')
  })

  it.each([
    ['peak-picked', 'picked by hand 10 N'],
    ['premature-failure', 'failure as declared 10 N'],
  ] as const)('puts a person’s word (%s) first and keeps the peak found beside it', (kind, label) => {
    const { marks } = sceneOf(parts({}, { word: word(kind) }))
    expect(marks[0]).toEqual({ timeS: 1, value: 10, label, shape: 'word' })
    expect(marks.map((mark) => mark.label)).toContain('peak found 20 N')
  })

  it('draws zero with the noise about it up to where the start of loading', () => {
    const band = { fromS: 0, toS: 0.9, value: 0, halfWidth: 0.4, label: 'zero, noise SD 0.4 N' }
    expect(sceneOf(parts()).band).toEqual(band)
    expect(sceneOf(parts({ noiseN: null })).band).toMatchObject({ halfWidth: 0, label: 'zero' })
  })

  it('tells where samples are missing, so that no line is drawn there', () => {
    const gap = madeEvent({ kind: 'gap', startTimeS: 1.2, endTimeS: 1.9 })
    expect(sceneOf(parts({ events: [popIn, gap, finalDrop] })).gaps).toEqual([{ fromS: 1.2, toS: 1.9 }])
    expect(sceneOf(parts()).gaps).toEqual([])
  })
  it('draws nothing for a curve without samples', () => {
    const empty = { timeS: new Float64Array(), force: new Float64Array() }
    expect(sceneOf(parts({}, { curve: empty }))).toEqual({
      marks: [],
      levels: [],
      spans: [],
      gaps: [],
      band: null,
      line: null,
    })
  })
})

describe('seatedLineOf', () => {
  const course = (toe: { zeroTimeS: number; slopeNPerS: number } | null) =>
    ({ course: { toe }, peakN: 20 }) as unknown as Pick<EvaluationResult, 'course' | 'peakN'>

  it('goes from zero up to the height of the peak', () => {
    expect(seatedLineOf(course({ zeroTimeS: 0.5, slopeNPerS: 10 }))).toMatchObject({
      ...{ fromS: 0.5, fromValue: 0, toS: 2.5, toValue: 20 },
    })
  })

  it('is not there without a seated part, a peak or a rising slope', () => {
    expect(seatedLineOf(course(null))).toBeNull()
    expect(seatedLineOf({ ...course({ zeroTimeS: 0.5, slopeNPerS: 10 }), peakN: null })).toBeNull()
    expect(seatedLineOf(course({ zeroTimeS: 0.5, slopeNPerS: 0 }))).toBeNull()
    expect(seatedLineOf({ course: null, peakN: 20 })).toBeNull()
  })
})
