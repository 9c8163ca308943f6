import { expect, it } from 'vitest'
import { fitWords } from '#words/calibration/methodWords.ts'
import { scriptedCalibration } from '../../fakes/scripted/scriptedReadings.ts'

it('says which readings made the curve, and whether it is held at zero', () => {
  const { assessment } = scriptedCalibration(1, { name: 'a', madeAt: '2026-05-11T09:00:00.000Z', dueOn: null })
  expect(fitWords(assessment)).toBe('Least squares over 21 readings taken going up (calibration-1).')
  expect(fitWords({ ...assessment, fitOver: 'all', throughZero: true })).toMatch(/up and down, through zero/)
})
