import { expect, it } from 'vitest'
import type { CalibrationSummary } from '#contract/calibration/calibrationRecords.ts'
import { calibrationOptions } from '#renderer/pages/reevaluation/begin/calibrationOptions.ts'

const calibration = (calibrationId: number, readingUnit: CalibrationSummary['readingUnit']): CalibrationSummary => ({
  calibrationId,
  name: `Weights ${calibrationId}`,
  madeAt: '2026-04-13T09:00:00.000Z',
  by: 'bench 1',
  source: 'virtual amplifier: mixed',
  device: 'virtual',
  readingUnit,
  supersedes: null,
  dueOn: null,
  overdue: false,
  degree: 1,
  class: '0.5',
  verifiedRangeN: [49, 559],
  expandedUncertaintyPercent: 0.6,
  readings: 21,
  inForce: calibrationId === 1,
})

it('offers only calibrations for the readings that the break has, and all where that is not known', () => {
  const both = [calibration(2, 'N'), calibration(1, 'counts')]
  expect(calibrationOptions(both, 'counts')).toEqual([
    {
      calibrationId: 1,
      name: 'Weights 1',
      words: 'Weights 1: 13 Apr 2026, class 0.5, readings in counts, virtual, simulated, in force',
    },
  ])
  expect(calibrationOptions(both, null).map(({ calibrationId }) => calibrationId)).toEqual([2, 1])
})
