import { expect, it } from 'vitest'
import type { CalibrationDrift } from '#contract/calibration/calibrationRecords.ts'
import { driftSeries } from '#domain/calibration/control/driftSeries.ts'

const made = (
  calibrationId: number,
  previousId: number | null,
  slopeN: number,
  zeroReading: number,
): CalibrationDrift => ({
  calibrationId,
  previousId,
  name: `no. ${calibrationId}`,
  madeAt: `203${calibrationId}-04-01T08:00:00.000Z`,
  temperatureNote: '',
  temperatureStartC: null,
  temperatureEndC: null,
  slopeN,
  slopeChangePercent: null,
  zeroReading,
  zeroChangeN: null,
})

it('holds every calibration of the newest one’s device against the first of them', () => {
  const drift = [made(1, null, 0.01, 100), made(2, null, 5, 0), made(3, 1, 0.0101, 150), made(4, 3, 0.0102, 90)]
  const series = driftSeries(drift)
  expect(series.map(({ name }) => name)).toEqual(['no. 1', 'no. 3', 'no. 4'])
  expect(series[0]).toMatchObject({ slopePercent: 0, zeroN: 0 })
  expect(series[1]?.slopePercent).toBeCloseTo(1, 9)
  expect(series[1]?.zeroN).toBeCloseTo(0.505, 9)
  expect(series[2]?.zeroN).toBeCloseTo(-0.102, 9)
})

it('has nothing to show without calibrations', () => expect(driftSeries([])).toEqual([]))
