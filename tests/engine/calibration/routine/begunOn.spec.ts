import { expect, test } from 'vitest'
import { deviceNow, refuseOtherDevice } from '#engine/calibration/routine/begunOn.ts'

const bench = (label: string, unit: 'counts' | 'kN' | null) => ({
  device: () => ({ label, kind: 'serial' as const }),
  readingUnit: () => unit,
})

test('takes readings without a unit of their own for counts', () => {
  expect(deviceNow(bench('/dev/ttyA', null))).toEqual({ source: '/dev/ttyA', device: 'serial', readingUnit: 'counts' })
})

test('goes on with the device that it was begun on, in the same unit, and with no other', () => {
  const begun = deviceNow(bench('/dev/ttyA', 'counts'))
  expect(() => refuseOtherDevice(bench('/dev/ttyA', 'counts'), begun)).not.toThrow()
  expect(() => refuseOtherDevice(bench('/dev/ttyB', 'counts'), begun)).toThrow(/Connect|another amplifier/)
  expect(() => refuseOtherDevice(bench('/dev/ttyA', 'kN'), begun)).toThrow(
    expect.objectContaining({ code: 'conflict' }),
  )
})
