import { expect, it } from 'vitest'
import { calibrationAbout, checksAbout, driftAbout } from '#words/calibration/charts/aboutWords.ts'

it('names the calibrations and checks that a figure shows', () => {
  expect(calibrationAbout({ calibrationId: 3, name: 'Spring', madeAt: '2031-03-04T12:00:00.000Z' })).toBe(
    'Calibration 3, “Spring”, 4 Mar 2031.',
  )
  expect(checksAbout({ calibrationId: 3, weight: '20 kg disc' })).toBe('Checks of 20 kg disc under calibration 3.')
  expect(driftAbout([{ name: 'A' }, { name: 'B' }, { name: 'C' }])).toBe('3 calibrations, “A” to “C”.')
})
