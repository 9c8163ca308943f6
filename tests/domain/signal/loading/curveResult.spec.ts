import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { composeResult, type FoundInCurve } from '#domain/signal/loading/curveResult.ts'
import type { LoadEnd } from '#domain/signal/loading/loadCurve.ts'
import { createClippingWatch } from '#domain/signal/stream/clippingWatch.ts'
import { lines, madeCurve } from '#tests/fakes/madeCurve.ts'

const settings = detectionSettings.parse({})
const clipping = (given: Partial<LoadEnd['clipping']> = {}): LoadEnd['clipping'] => ({
  ...createClippingWatch(settings),
  clipped: () => false,
  overCapacity: () => false,
  ...given,
})
/** 500 N/s up to 5000 N at 10 s, gone within one interval. */
const broken: LoadEnd = {
  outcome: 'break',
  peak: 5000,
  peakS: 10,
  breakS: 10,
  afterBreak: 100,
  loadingRate: 500,
  fallS: 0.01,
  clipping: clipping(),
}
const curve = madeCurve(lines([0, 0], [10, 5000], [10.01, 100]), { intervalS: 0.01, endS: 10.5 })

type Given = {
  end?: Partial<LoadEnd> | null
  found?: Partial<FoundInCurve>
  stream?: Partial<Parameters<typeof composeResult>[3]>
  settings?: Parameters<typeof detectionSettings.parse>[0]
}
function composed({ end = {}, found = {}, stream = {}, settings: asked = {} }: Given = {}) {
  return composeResult(
    {
      glitches: [],
      gaps: [],
      end: end === null ? null : { ...broken, ...end },
      noise: 1,
      sigma: 1,
      onsetS: 0,
      zero: 0,
      intervalS: 0.01,
      ...found,
    },
    curve,
    detectionSettings.parse(asked),
    { samples: 1051, missingSamples: 0, intervalS: 0.01, noiseAtRest: 3, ...stream },
  )
}
const flags = (given: Given) => composed(given).flags
const gap = (startTimeS: number, endTimeS: number) => ({ startTimeS, endTimeS })
const kinds = (given: Given) => composed(given).events.map(({ kind }) => kind)

describe('the result of a loading', () => {
  it('is what was found, in the form of the contract', () => {
    expect(composed()).toMatchObject({
      outcome: 'break',
      peakN: 5000,
      peakTimeS: 10,
      onsetTimeS: 0,
      breakTimeS: 10,
      sampleRateHz: 100,
      samples: 1051,
      noiseN: 1,
      loadingRateNPerS: 500,
      samplingBoundN: 5,
      samplingBoundPercent: 0.1,
      afterBreakN: 100,
      flags: [],
    })
    expect(composed().course).not.toBeNull()
    expect(kinds({})).toContain('final-drop')
  })

  it('is none where no loading started or it came to nothing, with the noise that is known', () => {
    expect(composed({ end: null })).toMatchObject({ outcome: 'none', peakN: null, noiseN: 3, course: null })
    expect(composed({ end: { outcome: 'none' } })).toMatchObject({ outcome: 'none', peakN: null, noiseN: 1 })
  })

  it('has no sample rate and no bound where the interval is not known', () => {
    expect(composed({ stream: { intervalS: 0 } })).toMatchObject({ sampleRateHz: null, samplingBoundN: null })
    expect(composed({ stream: { intervalS: Number.NaN } }).sampleRateHz).toBeNull()
    expect(composed({ stream: { intervalS: 2 } }).sampleRateHz).toBe(0.5)
    expect(composed({ end: { loadingRate: null } })).toMatchObject({ samplingBoundN: null, samplingBoundPercent: null })
  })
})

describe('the doubts about a result', () => {
  it('are missing samples, from the first on', () => {
    expect([0, 1].map((missingSamples) => flags({ stream: { missingSamples } }))).toEqual([[], ['gap']])
  })

  it('are glitches up to the break, and all of them where there was none', () => {
    const glitches = [9.99, 10, 10.01].map((timeS) => ({ ...gap(timeS, timeS), jump: 900 }))
    const listed = (end: Partial<LoadEnd> | null) =>
      kinds({ found: { glitches }, end }).filter((kind) => kind === 'glitch').length
    expect([{}, { breakS: null, outcome: 'unloading' as const }, null].map(listed)).toEqual([2, 3, 3])
    expect(flags({ found: { glitches: glitches.slice(0, 1) } })).toEqual(['glitch'])
    expect(flags({ found: { glitches: glitches.slice(2) } })).toEqual([])
  })

  it('are noise that is not known, a reading at its end and one above the capacity', () => {
    expect(flags({ found: { noise: null } })).toEqual(['no-pre-trigger'])
    const clipped = { clipping: clipping({ clipped: () => true, startS: () => 8, endS: () => 9 }) }
    expect(composed({ end: clipped })).toMatchObject({ flags: ['clipped'], samplingBoundN: null })
    expect(composed({ end: clipped }).events.find(({ kind }) => kind === 'clipping')).toMatchObject(gap(8, 9))
    expect(flags({ end: { clipping: clipping({ overCapacity: () => true }) } })).toEqual(['over-capacity'])
  })

  it('are gaps over the peak or the break, their ends included', () => {
    const over = (startS: number, endS: number, end: Partial<LoadEnd> = {}) =>
      flags({ found: { gaps: [gap(startS, endS)] }, end }).includes('gap-at-peak')
    expect([over(9, 9.9), over(9, 10), over(9.5, 10.5), over(10, 11), over(10.1, 11)]).toEqual([
      false,
      true,
      true,
      true,
      false,
    ])
    // The break comes after a peak that was held.
    expect([over(9, 9.5, { peakS: 9.2 }), over(9.8, 10.2, { peakS: 9.2 })]).toEqual([true, true])
    expect([over(9.8, 10.2, { peakS: 9.2, breakS: null }), over(9.3, 9.9, { peakS: 9.2 })]).toEqual([false, false])
  })

  it('are samples that come too slowly: more than 1 % of the peak from one to the next', () => {
    const tooSlow = (intervalS: number) => flags({ stream: { intervalS } }).includes('sampling-too-slow')
    expect([0.0999, 0.1, 0.1001].map(tooSlow)).toEqual([false, false, true])
    const settling = (settlingTimeS: number) =>
      composed({ settings: { settlingTimeS }, stream: { intervalS: 0.05 } }).samplingBoundN!
    expect(settling(0.03)).toBeCloseTo(500 * 0.08, 9)
  })

  it('reach as far as the longest gap over the peak, where that is longer than the interval', () => {
    const bound = (gaps: ReturnType<typeof gap>[]) => composed({ found: { gaps } }).samplingBoundN
    expect(bound([gap(9.9, 10.1), gap(9.7, 10)])).toBeCloseTo(500 * 0.3, 9)
    expect(bound([gap(9.999, 10.001)])).toBe(5)
    expect(bound([gap(2, 4)])).toBe(5)
  })
})

describe('the events of a result', () => {
  it('are in order of their beginnings, and of their ends where they begin together', () => {
    const { events } = composed({ found: { gaps: [gap(7, 9), gap(3, 4), gap(3, 3.5), gap(7, 8)] } })
    const times = events.filter(({ kind }) => kind === 'gap').map(({ startTimeS, endTimeS }) => [startTimeS, endTimeS])
    expect(times).toEqual([
      [3, 3.5],
      [3, 4],
      [7, 8],
      [7, 9],
    ])
    const starts = events.map(({ startTimeS }) => startTimeS)
    expect(starts).toEqual([...starts].sort((a, b) => a - b))
  })
})
