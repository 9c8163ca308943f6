import { expect, it } from 'vitest'
import { emptyPlan } from '#renderer/pages/calibration/plan/planForm.ts'
import { rememberedPlan } from '#renderer/pages/calibration/plan/planStore.ts'

const begun = { texts: emptyPlan, typedIn: {} }

it('gives back what was typed, with the units in which it was typed', () => {
  const steps = [['5 kg'], ['5 kg', '10 kg']]
  const { texts, typedIn } = rememberedPlan(
    JSON.stringify({ ...emptyPlan, latitude: '53,4', steps, typedIn: { height: 'US' } }),
  )
  expect(texts).toEqual({ ...emptyPlan, latitude: '53,4', steps })
  expect(typedIn).toEqual({ height: 'US' })
})

it.each([null, '', '{"latitude":', '[]', 'null', '7', '"text"'])('begins anew where %j is stored', (stored) => {
  expect(rememberedPlan(stored)).toEqual(begun)
})

it('leaves out what is of another kind or not known', () => {
  const stored = {
    latitude: 53.4,
    steps: [['5 kg'], 'x'],
    typedIn: { height: 'furlongs', nothing: 'SI' },
    colour: 'red',
  }
  expect(rememberedPlan(JSON.stringify(stored))).toEqual({ texts: emptyPlan, typedIn: {} })
})
