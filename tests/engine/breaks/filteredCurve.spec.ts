import { describe, expect, test } from 'vitest'
import type { BreakRecord } from '#contract/breaks/break.ts'
import type { RawCurve } from '#contract/breaks/curve.ts'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { filteredCurve, slopeCurve } from '#engine/breaks/filteredCurve.ts'

const whole = { fromS: null, toS: null, maxPoints: null }
type Reviewed = Pick<BreakRecord, 'header' | 'evaluations' | 'inForceId'>

/** A break without a result, under the scale and the tare of its capture. */
function record(nPerCount: number | null): Reviewed {
  return {
    header: {
      breakId: 1,
      sessionId: 1,
      specimenId: null,
      startedAt: '2031-05-02T09:30:00.000Z',
      readingUnit: 'counts',
      scale: nPerCount === null ? { kind: 'none' } : { kind: 'uncalibrated-scale', nPerCount },
      tare: { takenAt: '2031-05-02T09:30:00.000Z', sd: 1, readings: 80, offset: 500 * (nPerCount ?? 1) },
      settings: detectionSettings.parse({}),
    },
    evaluations: [],
    inForceId: null,
  }
}

/** 1000 samples at 1 kHz, 2 counts each above the last, from the tare on. */
const raw: RawCurve = {
  timeS: Float64Array.from({ length: 1000 }, (_, i) => i / 1000),
  readings: Float64Array.from({ length: 1000 }, (_, i) => 500 + 2 * i),
}

describe('filteredCurve', () => {
  const filter = { kind: 'cfc', frequencyClass: 60 } as const

  test('filters forces after tare under the scale', () => {
    const curve = filteredCurve(record(0.5), raw, filter, whole)
    expect([curve.unit, curve.samples, curve.force.length]).toEqual(['N', 1000, 1000])
    // A ramp stays a ramp: 1 N a sample.
    for (const i of [0, 1, 500, 998, 999]) expect(curve.force[i]).toBeCloseTo(i, 3)
  })

  test('filters readings where there is no scale', () => {
    const curve = filteredCurve(record(null), raw, filter, whole)
    expect(curve.unit).toBe('counts')
    expect(curve.force[500]).toBeCloseTo(1000, 3)
  })

  test('cuts and thins only after filtering, so that a view shows what the whole shows', () => {
    const rough = { ...raw, readings: raw.readings.map((reading, i) => reading + ((i * 7919) % 101)) }
    const all = filteredCurve(record(0.5), rough, filter, whole)
    const part = filteredCurve(record(0.5), rough, filter, { fromS: 0.4, toS: 0.5, maxPoints: null })
    // One sample more before it; the sample at 0.5 s reaches its other edge.
    expect(part.timeS).toEqual(all.timeS.slice(399, 501))
    expect(part.force).toEqual(all.force.slice(399, 501))
    expect(part.samples).toBe(1000)
    const thin = filteredCurve(record(0.5), rough, filter, { ...whole, maxPoints: 100 })
    expect(thin.force.length).toBeLessThanOrEqual(100)
    expect(Math.max(...thin.force)).toBe(Math.max(...all.force))
  })

  test('does not touch what it is given', () => {
    const before = raw.readings.slice()
    filteredCurve(record(0.5), raw, filter, whole)
    expect(raw.readings).toEqual(before)
  })

  test('refuses a filter that does not fit the curve, and says what to do', () => {
    const refused = (wrong: Parameters<typeof filteredCurve>[2]) => () => filteredCurve(record(0.5), raw, wrong, whole)
    for (const [wrong, message, hint] of [
      [{ kind: 'cfc', frequencyClass: 180 }, /CFC 180 needs 1800 samples a second, and this curve has 1000/, /400 Hz/],
      [{ kind: 'butterworth', cutoffHz: 450 }, /450 Hz is too high/, /at most 400 Hz/],
      [{ kind: 'moving-average', windowS: 0.001 }, /too short/, /at least 0.002 s/],
    ] as const)
      expect(refused(wrong)).toThrow(
        expect.objectContaining({
          code: 'invalid-input',
          message: expect.stringMatching(message),
          hint: expect.stringMatching(hint),
        }),
      )
  })
})

describe('slopeCurve', () => {
  test('is in force per second, at the samples of the curve', () => {
    const slope = slopeCurve(record(0.5), raw, 0.01, whole)
    expect([slope.unit, slope.samples]).toEqual(['N', 1000])
    expect(slope.timeS).toEqual(raw.timeS)
    // By hand: 2 counts of 0.5 N each millisecond.
    for (const value of slope.force) expect(value).toBeCloseTo(1000, 6)
  })

  test('is cut and thinned like any drawn curve', () => {
    const slope = slopeCurve(record(null), raw, 0.01, { fromS: 0.4, toS: 0.5, maxPoints: 100 })
    expect(slope.unit).toBe('counts')
    expect(slope.timeS[0]).toBe(0.399)
    expect(slope.timeS.length).toBeLessThanOrEqual(100)
  })

  test('refuses a window that is too short, and says what to do', () => {
    expect(() => slopeCurve(record(0.5), raw, 0.0005, whole)).toThrow(
      expect.objectContaining({ code: 'invalid-input', hint: expect.stringContaining('0.002 s') }),
    )
  })
})
