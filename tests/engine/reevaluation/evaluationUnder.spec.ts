import { expect, test } from 'vitest'
import type { BreakHeader } from '#contract/breaks/capture.ts'
import { evaluation } from '#contract/breaks/evaluation.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { detectionMethod } from '#domain/signal/loading/evaluateCurve.ts'
import { evaluateRawCurve } from '#domain/signal/loading/evaluateRawCurve.ts'
import { storedEvaluation } from '#domain/signal/loading/storedEvaluation.ts'
import { evaluationUnder, type StoredBreak } from '#engine/reevaluation/evaluationUnder.ts'
import { madeCalibration } from '../../archive/storedCalibration.ts'
import { header, morning } from '../../archive/storedStudy.ts'

// A second without load at 1000 counts, a climb by 10 counts a millisecond to 61,000, a fall back; some counts of noise.
const timeS = Float64Array.from({ length: 8000 }, (_, i) => i / 1000)
const readings = Float64Array.from(timeS, (_, i) => {
  const load = i < 1000 || i > 7000 ? 0 : (i - 1000) * 10
  return 1000 + load + ((i * 7919) % 7) - 3
})
const curve = { timeS, readings }
const highest = Math.max(...readings)
const tare = { offset: 10, sd: 0.01, readings: 80, takenAt: morning }
const captured: BreakHeader = { ...header(1, null), breakId: 4, tare }

function stored(change: Partial<BreakHeader> = {}): StoredBreak {
  const atCapture = { ...captured, ...change }
  const made = storedEvaluation(atCapture, evaluateRawCurve(curve, atCapture), 'complete', morning, null)
  return {
    header: atCapture,
    end: { breakId: 4, endedAt: morning, ending: 'complete', samples: 8000, missingSamples: 0, curveSha256: '' },
    inForce: evaluation.parse({ ...made, breakId: 4, evaluationId: 9 }),
    curve,
  }
}

/** A straight line through a zero reading of 500 counts. */
function calibrated(nPerCount: number): Calibration {
  const rows = [0, 250, 500, 750, 1000].map((forceN) => ({
    run: 1,
    direction: 'up' as const,
    forceN,
    reading: 500 + forceN / nPerCount,
  }))
  return { ...madeCalibration({ rows, assessment: calibrationOf(rows, { degree: 1 }) }), calibrationId: 2 }
}

const nothingElse = { calibration: null, settings: {} }

test('finds again what was found at capture when nothing differs, and names the method', () => {
  const before = stored()
  const again = evaluationUnder(before, nothingElse, null)
  expect(again.result).toEqual(before.inForce.result)
  expect(again).toMatchObject({ breakId: 4, besideId: 9, method: detectionMethod, tareOffset: 10 })
  expect(again.settings).toEqual(before.header.settings)
})

test('carries the zero of the capture over to a calibration', () => {
  const { result, scale, tareOffset } = evaluationUnder(stored(), { calibration: calibrated(0.02), settings: {} }, null)
  expect(scale).toMatchObject({ kind: 'calibration', calibrationId: 2 })
  // By hand: the tare of 10 N at 0.01 N a count is 1000 counts, which the calibration takes for (1000 - 500) x 0.02 N.
  expect(tareOffset).toBeCloseTo(10, 6)
  expect(result.peakN).toBeCloseTo((highest - 1000) * 0.02, 6)
  expect(result.flags).toContain('above-verified-range')
  expect(result.flags).not.toContain('uncalibrated')
})

test('stays under the scale and zero of the result in force, which need not be those of the capture', () => {
  const before = stored()
  const calibration = calibrated(0.02)
  const under = evaluationUnder(before, { calibration, settings: {} }, [1, 2000])
  const inForce = evaluation.parse({ ...under, madeAt: morning, evaluationId: 12 })
  const again = evaluationUnder({ ...before, inForce }, nothingElse, [1, 2000])
  expect(again).toEqual({ ...under, besideId: 12 })
})

test('takes the given thresholds and keeps the others as they were at capture', () => {
  const settings = { ...captured.settings, breakDropShare: 0.3, postBreakS: 0.2 }
  const again = evaluationUnder(stored({ settings }), { calibration: null, settings: { postBreakS: 0.7 } }, null)
  expect(again.settings).toEqual({ ...settings, postBreakS: 0.7 })
})

test('finds the start anew where what it is found from differs, and only there', () => {
  const settings = { ...captured.settings, startThresholdN: 250, capacityN: 10_000 }
  const under = (change: object) =>
    evaluationUnder(stored({ settings }), { calibration: null, settings: change }, null).settings.startThresholdN
  expect(under({})).toBe(250)
  expect(under({ breakDropShare: 0.5 })).toBe(250)
  expect(under({ capacityN: 10_000 })).toBe(250)
  expect(under({ capacityN: 20_000 })).toBeNull()
  expect(under({ startNoiseMultiple: 9 })).toBeNull()
  // Under twice the newtons a count it is twice as high.
  const other = { calibration: calibrated(0.02), settings: {} }
  expect(evaluationUnder(stored({ settings }), other, null).settings.startThresholdN).toBeCloseTo(500, 6)
})

test('keeps how the capture ended as a flag, and works without a tare', () => {
  const before = stored({ tare: null })
  const cut = { ...before, end: { ...before.end, ending: 'recovered' as const } }
  const again = evaluationUnder(cut, nothingElse, null)
  expect(again.result.flags).toContain('recovered')
  expect(again.tareOffset).toBe(0)
})
