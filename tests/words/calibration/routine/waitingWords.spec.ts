import { expect, it } from 'vitest'
import { waitingWords } from '#words/calibration/routine/waitingWords.ts'

it('says why a reading is not steady yet, as far as that is known', () => {
  expect(waitingWords({ unsteadyBecause: 'it swings' })).toBe('Waiting: it swings.')
  expect(waitingWords({ unsteadyBecause: null })).toBe('Waiting for a steady reading.')
})
