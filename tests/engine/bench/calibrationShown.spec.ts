import { expect, it } from 'vitest'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { calibrationAtHand, calibrationShown, calibrationUnused } from '#engine/bench/calibrationShown.ts'

const inForce = {
  calibrationId: 3,
  name: 'spring 2031',
  dueOn: '2031-06-30',
  device: 'serial',
  readingUnit: 'counts',
  assessment: { result: { verifiedRangeN: [500, 20_000] } },
} as unknown as Calibration
const scaleOf = (calibrationId: number): ForceScale => ({ kind: 'calibration', calibrationId, coefficients: [0, 1] })

it('is at hand only where the readings that come are under it', () => {
  expect(calibrationAtHand(scaleOf(3), inForce)).toBe(inForce)
  expect(calibrationAtHand(scaleOf(2), inForce)).toBeNull()
  expect(calibrationAtHand(scaleOf(3), null)).toBeNull()
  expect(calibrationAtHand({ kind: 'none' }, inForce)).toBeNull()
  expect(calibrationAtHand({ kind: 'uncalibrated-scale', nPerCount: 1 }, inForce)).toBeNull()
})
it('is shown with its range, and as overdue from the day after it is due', () => {
  const shown = { calibrationId: 3, name: 'spring 2031', verifiedRangeN: [500, 20_000], dueOn: '2031-06-30' }
  expect(calibrationShown(inForce, '2031-06-30T23:59:59.000Z')).toEqual({ ...shown, overdue: false })
  expect(calibrationShown(inForce, '2031-07-01T00:00:00.000Z')).toEqual({ ...shown, overdue: true })
  expect(calibrationShown(null, '2031-07-01T00:00:00.000Z')).toBeNull()
})
it('says why it is not used where it is in force', () => {
  const because = (now: unknown, unit: 'counts' | 'N' | null) =>
    calibrationUnused(inForce, now as Parameters<typeof calibrationUnused>[1], unit)?.because ?? null
  const serial = { status: 'open', source: { kind: 'serial' } }
  expect(because({ status: 'closed', source: null }, null)).toBe('not-connected')
  expect(because({ status: 'open', source: { kind: 'virtual' } }, 'counts')).toBe('other-device')
  expect(because(serial, 'N')).toBe('other-unit')
  expect(because(serial, 'counts')).toBeNull()
  expect(because(serial, null)).toBeNull()
  expect(calibrationUnused(null, { status: 'closed', source: null }, 'N')).toBeNull()
})
