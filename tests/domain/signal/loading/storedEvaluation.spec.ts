import { describe, expect, it } from 'vitest'
import { type EvaluationResult, evaluationResult } from '#contract/breaks/evaluation.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { flaggedResult, storedEvaluation } from '#domain/signal/loading/storedEvaluation.ts'
import { evaluationOf, header, morning, rampAndFall } from '../../../archive/storedStudy.ts'

const { result: found } = evaluationOf(rampAndFall(10, 100))
const result: EvaluationResult = evaluationResult.parse({ ...found, peakN: 500, flags: [] })
const calibrated: ForceScale = { kind: 'calibration', calibrationId: 1, coefficients: [0, 0.01] }

describe('flaggedResult', () => {
  it.each([
    ['readings without a scale', { kind: 'none' }, 'complete', null, ['no-scale']],
    ['a scale that was typed', { kind: 'uncalibrated-scale', nPerCount: 1 }, 'complete', null, ['uncalibrated']],
    ['a unit of the device', { kind: 'device-unit', unit: 'N' }, 'complete', null, ['uncalibrated']],
    ['a peak inside the verified range', calibrated, 'complete', [100, 500], []],
    ['a peak above the verified range', calibrated, 'complete', [100, 499], ['above-verified-range']],
    ['a peak below the verified range', calibrated, 'complete', [501, 900], ['below-verified-range']],
    ['a capture that was cut short', calibrated, 'interrupted', [100, 500], ['interrupted']],
    ['a capture that a crash left behind', calibrated, 'recovered', [100, 500], ['recovered']],
  ] as const)('says of %s what a reader must know', (_what, scale, ending, verifiedRangeN, flags) => {
    expect(flaggedResult(result, scale as ForceScale, ending, verifiedRangeN).flags).toEqual(flags)
  })

  it('says nothing twice, and keeps what the curve itself said', () => {
    const flagged = flaggedResult({ ...result, flags: ['clipped', 'no-scale'] }, { kind: 'none' }, 'complete', null)
    expect(flagged.flags).toEqual(['clipped', 'no-scale'])
  })
})

describe('storedEvaluation', () => {
  it('names scale, zero and settings under which the result was found', () => {
    const { settings, scale } = header(1, null)
    const tare = { offset: 3, sd: 1, readings: 80, takenAt: morning }
    const stored = storedEvaluation({ settings, scale, tare }, result, 'complete', morning, null)
    expect(stored).toMatchObject({ madeAt: morning, settings, scale, tareOffset: 3 })
    expect(storedEvaluation({ settings, scale, tare: null }, result, 'complete', morning, null).tareOffset).toBe(0)
  })
})
