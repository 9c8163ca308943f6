import { expect, it } from 'vitest'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { capturedEntry } from '#engine/bench/capture/captureLog.ts'

const result = { outcome: 'break', peakN: 4812, peakTimeS: 8.6, missingSamples: 2, flags: ['gap'] } as EvaluationResult
const end = { breakId: 7, samples: 900 }

it('calls a break a break, and all else a load that was let go again', () => {
  expect(capturedEntry(end, result, null)).toMatchObject({ event: 'break', breakId: 7, peakN: 4812, samples: 900 })
  for (const outcome of ['unloading', 'interrupted', 'none'] as EvaluationResult['outcome'][])
    expect(capturedEntry(end, { ...result, outcome }, null)).toMatchObject({ event: 'unloading' })
})
it('says under which calibration, and null where there was none', () => {
  const verification = {
    calibrationId: 3,
    name: 'spring 2031',
    verifiedRangeN: null,
    timesVerified: 1.2,
    expandedUncertaintyN: null,
    expandedUncertaintyPercent: null,
  }
  expect(capturedEntry(end, result, verification)).toMatchObject({ calibrationId: 3, timesVerified: 1.2 })
  expect(capturedEntry(end, result, null)).toMatchObject({
    calibrationId: null,
    timesVerified: null,
    expandedUncertaintyN: null,
  })
})
