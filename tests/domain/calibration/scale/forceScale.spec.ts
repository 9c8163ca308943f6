import { describe, expect, it } from 'vitest'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { forceOfReading, taredForce, withoutForce } from '#domain/calibration/scale/forceScale.ts'
import { madeEvent } from '#tests/fakes/madeEvents.ts'

describe('force of a reading', () => {
  it('is unknown without a scale', () => {
    expect(forceOfReading({ kind: 'none' }, 'counts')).toBeNull()
  })

  it('turns a cell wired in reverse the right way round', () => {
    expect(forceOfReading({ kind: 'uncalibrated-scale', nPerCount: -0.5 }, 'counts')!(-200)).toBe(100)
  })

  it.each([
    // Exact: standard gravity 9.80665 m/s², 1 lbf = 4.4482216152605 N.
    ['N', 5, 5],
    ['kN', 2, 2000],
    ['lbf', 1, 4.4482216152605],
    ['kg', 1, 9.80665],
    ['kgf', 10, 98.0665],
    ['g', 1000, 9.80665],
  ] as const)('reads %s as force', (unit, reading, forceN) => {
    expect(forceOfReading({ kind: 'device-unit', unit }, unit)!(reading)).toBeCloseTo(forceN, 12)
  })

  it('follows a polynomial: the NIST StRD Pontius coefficients at its first and last load', () => {
    // NIST StRD Pontius (load cell), certified B0, B1, B2, evaluated with exact rational arithmetic:
    // python3: float(F('0.673565789473684E-03') + F('0.732059160401003E-06') * x + F('-0.316081871345029E-14') * x * x)
    const coefficients = [0.673565789473684e-3, 0.732059160401003e-6, -0.316081871345029e-14]
    const force = forceOfReading({ kind: 'calibration', calibrationId: 1, coefficients }, 'counts')!
    expect(force(150_000)).toBeCloseTo(0.1104113214285715, 14)
    expect(force(3_000_000)).toBeCloseTo(2.1684036785714302, 14)
    // Its data: .11019 and .11052 at 150000, 2.16844 and 2.16829 at 3000000; certified residual SD 2.05E-04.
    expect(Math.abs(force(150_000) - 0.110355)).toBeLessThan(3 * 2.05e-4)
    expect(Math.abs(force(3_000_000) - 2.168365)).toBeLessThan(3 * 2.05e-4)
  })

  it('goes by the unit of the reading, and by that of the scale where the reading is in counts', () => {
    expect(forceOfReading({ kind: 'device-unit', unit: 'kN' }, 'counts')!(3)).toBe(3000)
    expect(forceOfReading({ kind: 'device-unit', unit: 'kN' }, 'N')!(3)).toBe(3)
  })

  it('follows constants and straight lines, and refuses none and what is not finite', () => {
    const curve = (coefficients: number[]) =>
      forceOfReading({ kind: 'calibration', calibrationId: 1, coefficients }, 'counts')!
    expect(curve([5])(3)).toBe(5)
    expect(curve([10, 2])(3)).toBe(16)
    expect(curve([10, -2])(3)).toBe(4)
    expect(curve([10, 2, 1])(3)).toBe(25)
    expect(() => curve([])).toThrow(RangeError)
    expect(() => curve([1, Number.NaN])).toThrow(RangeError)
  })

  it('takes the tare off every reading', () => {
    const readings = Float64Array.of(100, 200, -50)
    const scaled = taredForce(readings, { kind: 'uncalibrated-scale', nPerCount: 2 }, 'counts', 10)
    expect(scaled).toEqual({ force: Float64Array.of(190, 390, -110), unit: 'N' })
    expect(taredForce(readings, { kind: 'none' }, 'counts', 10)).toEqual({
      force: Float64Array.of(90, 190, -60),
      unit: 'counts',
    })
    expect(() => taredForce(readings, { kind: 'none' }, 'counts', Number.NaN)).toThrow(RangeError)
  })
})

describe('a result without force', () => {
  const result: EvaluationResult = {
    outcome: 'break',
    peakN: 1,
    peakTimeS: 2,
    onsetTimeS: 1,
    breakTimeS: 2,
    sampleRateHz: 80,
    samples: 10,
    missingSamples: 0,
    noiseN: 1,
    loadingRateNPerS: 1,
    samplingBoundN: 1,
    samplingBoundPercent: 0.5,
    afterBreakN: 0,
    flags: ['gap'],
    events: [
      madeEvent({
        kind: 'pop-in',
        startTimeS: 1,
        endTimeS: 1.5,
        dropN: 4,
        dropPercent: 5,
        fromN: 80,
        percentOfPeak: 60,
      }),
      madeEvent({ kind: 'stick-slip', dropN: 4, meanDropN: 3, leastDropN: 2, periodS: 0.5, cycles: 3 }),
    ],
    course: {
      ...{
        peaks: 2,
        timeToPeakS: 1,
        timeToFailureS: 1.1,
        meanRateNPerS: 9,
        rateSpreadPercent: 3,
        pressSpeedMmPerS: 0.5,
      },
      ...{ rates: [{ fromS: 1, toS: 2, rateNPerS: 9 }], toe: { zeroTimeS: 1, slopeNPerS: 9 }, impulseNs: 40, workJ: 2 },
    },
  }

  it('loses what is in newtons, keeps times and shares, and says so once', () => {
    const bare = withoutForce(withoutForce(result))
    expect(bare).toMatchObject({ peakN: null, noiseN: null, loadingRateNPerS: null, samplingBoundN: null })
    expect(bare).toMatchObject({ afterBreakN: null, peakTimeS: 2, samplingBoundPercent: 0.5, outcome: 'break' })
    expect(bare.flags).toEqual(['gap', 'no-scale'])
    expect(bare.events[0]).toMatchObject({ dropN: null, dropPercent: 5, fromN: null, percentOfPeak: 60 })
    const slips = { dropN: null, meanDropN: null, leastDropN: null, periodS: 0.5, cycles: 3 }
    expect(bare.events[1]).toMatchObject(slips)
    expect(bare.course).toEqual({
      ...{ peaks: 2, timeToPeakS: 1, timeToFailureS: 1.1, meanRateNPerS: null, rateSpreadPercent: 3 },
      ...{ pressSpeedMmPerS: 0.5, rates: [], toe: null, impulseNs: null, workJ: null },
    })
  })
})
