import { expect, it } from 'vitest'
import type { BreakHeader } from '#contract/breaks/capture.ts'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { drawnCurve } from '#engine/breaks/drawnCurve.ts'

const header: BreakHeader = {
  breakId: 1,
  sessionId: 1,
  specimenId: null,
  startedAt: '2031-04-06T08:00:00.000Z',
  readingUnit: 'counts',
  scale: { kind: 'uncalibrated-scale', nPerCount: 0.5 },
  tare: { offset: 10, sd: 1, readings: 80, takenAt: '2031-04-06T07:59:00.000Z' },
  settings: detectionSettings.parse({}),
}
const whole = { fromS: null, toS: null, maxPoints: null }
const timeS = Float64Array.from({ length: 1000 }, (_, i) => i / 100)
const readings = Float64Array.from({ length: 1000 }, (_, i) => (i === 617 ? 5000 : i))

it('gives force after tare', () => {
  const curve = drawnCurve({ header, evaluations: [], inForceId: null }, { timeS, readings }, whole)
  expect(curve).toMatchObject({ unit: 'N', samples: 1000 })
  expect(curve.force[100]).toBe(40)
})

it('gives readings after tare where there is no scale', () => {
  const curve = drawnCurve(
    { header: { ...header, scale: { kind: 'none' } }, evaluations: [], inForceId: null },
    { timeS, readings },
    whole,
  )
  expect(curve.unit).toBe('counts')
  expect(curve.force[100]).toBe(90)
})

it('keeps the peak however much it thins, and shares no memory with the stored curve', () => {
  const curve = drawnCurve(
    { header, evaluations: [], inForceId: null },
    { timeS, readings },
    { fromS: 2, toS: 8, maxPoints: 100 },
  )
  expect(curve.timeS.length).toBeLessThanOrEqual(100)
  expect(Math.max(...curve.force)).toBe(2490)
  expect(curve.timeS[0]).toBeCloseTo(1.99, 9)
  expect(curve.force.buffer.byteLength).toBe(curve.force.length * 8)
})
