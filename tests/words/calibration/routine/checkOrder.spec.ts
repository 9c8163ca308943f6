import { expect, it } from 'vitest'
import { checkOrder } from '#words/calibration/routine/checkOrder.ts'
import { quietLive } from '../../../fakes/scripted/scriptedCalibration.ts'

it('asks for the zero, then for the weight, then for patience', () => {
  const order = (phase: 'zero' | 'load' | 'waiting-for-steady' | 'averaging', because: string | null = null) =>
    checkOrder({ phase, weights: ['20 kg'], live: { ...quietLive, unsteadyBecause: because } })
  expect(order('zero').title).toBe('Take everything off')
  expect(order('load').title).toBe('Hang 20 kg')
  expect(order('waiting-for-steady', 'it swings').advice).toBe('Waiting: it swings.')
  expect(order('averaging').title).toBe('Hands off')
})
