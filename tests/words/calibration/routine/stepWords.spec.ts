import { expect, it } from 'vitest'
import { emptyPlan, readConditions } from '#renderer/pages/calibration/plan/planForm.ts'
import { usualWeights } from '#renderer/pages/calibration/weights/weightForm.ts'
import { stepWords } from '#words/calibration/routine/stepWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const SI = quantitiesIn('SI')
const { conditions } = readConditions({ ...emptyPlan, gravityFrom: 'typed', gravity: '9.8' }, SI)
const wordsOf = (steps: string[][], capacityN: number | null = null) =>
  stepWords(steps, usualWeights.SI, conditions, capacityN, SI.force)

it('says mass and force of every step: 10 kg of conventional mass pull 0.99985 x 98 N in air of 1.2 kg/m3 (R 111)', () => {
  const [step] = wordsOf([['10 kg']])
  expect(step).toMatchObject({ massKg: 10, trouble: null })
  expect(step?.forceN).toBeCloseTo(97.9853, 6)
})

it('says what is wrong with a step beside it, and leaves the others their force', () => {
  const words = wordsOf([['20 kg'], ['10 kg', '5 kg'], [], ['20 kg b'], ['10 kg', '20 kg']], 250)
  expect(words.map(({ trouble }) => trouble)).toEqual([
    null,
    'lighter than the step before',
    'no weight chosen',
    null,
    'above the rated load of 250.0\u00a0N: do not hang it',
  ])
  expect(wordsOf([['20 kg'], ['20 kg b']])[1]?.trouble).toBe('the same load as the step before')
})

it('says the mass while the force cannot be known yet', () => {
  expect(stepWords([['10 kg']], usualWeights.SI, null, null, SI.force)).toEqual([
    { massKg: 10, forceN: null, trouble: null },
  ])
})
