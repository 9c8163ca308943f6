import { describe, expect, it } from 'vitest'
import { evaluateRawCurve } from '#domain/signal/loading/evaluateRawCurve.ts'
import { runBench } from '#tests/reference/corpus.ts'

describe('a stored break', () => {
  const [captured] = runBench({ scenario: 'brittle', rateHz: 80, seed: 2, breaks: 1, keepSamples: true }).captures
  const { timeS, readings, settings, result } = captured!
  const takenAt = '2026-01-01T00:00:00.000Z'
  const tare = { offset: 482.13, sd: 1, readings: 80, takenAt }
  const scale = { kind: 'uncalibrated-scale', nPerCount: 0.01 } as const
  const header = { scale, readingUnit: 'counts', tare, settings } as const

  it('evaluates to the live result under its own scale and tare', () => {
    const again = evaluateRawCurve({ timeS, readings }, header)
    expect(again.peakN).toBeCloseTo(result.peakN!, 6)
    expect(again).toMatchObject({ outcome: 'break', samples: result.samples, peakTimeS: result.peakTimeS })
  })

  it('under another scale has the same peak in another measure', () => {
    const doubled = evaluateRawCurve(
      { timeS, readings },
      { ...header, scale: { kind: 'uncalibrated-scale', nPerCount: 0.02 }, tare: { ...tare, offset: 964.26 } },
    )
    expect(doubled.peakN).toBeCloseTo(2 * result.peakN!, 6)
    expect(doubled.peakTimeS).toBe(result.peakTimeS)
  })

  it('without a tare is evaluated as it was read', () => {
    const bare = evaluateRawCurve({ timeS, readings }, { ...header, tare: null })
    expect(bare).toEqual(evaluateRawCurve({ timeS, readings }, { ...header, tare: { ...tare, offset: 0 } }))
    expect(bare.peakN).toBeCloseTo(result.peakN! + 482.13, 1)
  })

  it('without a scale has an outcome but no newtons', () => {
    const bare = evaluateRawCurve(
      { timeS, readings },
      {
        ...header,
        scale: { kind: 'none' },
        tare: { ...tare, offset: 48_213 },
        settings: { ...settings, capacityN: null, startThresholdN: null },
      },
    )
    expect(bare).toMatchObject({ outcome: 'break', peakN: null, noiseN: null, peakTimeS: result.peakTimeS })
    expect(bare.flags).toContain('no-scale')
  })
})
