import { describe, expect, it } from 'vitest'
import { proposeSteps } from '#renderer/pages/calibration/plan/proposeSteps.ts'
import { usualWeights } from '#renderer/pages/calibration/weights/weightForm.ts'

const massOf = (names: readonly string[]) =>
  names.reduce((sum, name) => sum + usualWeights.SI.find((weight) => weight.name === name)!.nominalKg, 0)

describe('proposeSteps', () => {
  it('goes up in about even steps to all weights together', () => {
    const masses = proposeSteps(usualWeights.SI, 6).map(massOf)
    expect(masses).toHaveLength(6)
    expect(masses.at(-1)).toBe(58)
    // Masses of 1, 2, 5, 10, 20 and 20 kg come within 1 kg of every sixth of 58 kg.
    for (const [index, mass] of masses.entries()) expect(Math.abs(mass - (58 * (index + 1)) / 6)).toBeLessThanOrEqual(1)
  })
  it('never makes two equal steps, also where the weights cannot make as many as wanted', () => {
    const alike = [1, 2].map((number) => ({ name: `no. ${number}`, nominalKg: 20, conventionalMassKg: null }))
    expect(proposeSteps(alike, 6)).toEqual([['no. 1'], ['no. 1', 'no. 2']])
  })
  it('takes many weights one after another instead of trying every combination', () => {
    const many = Array.from({ length: 30 }, (_, index) => ({
      name: `no. ${index + 1}`,
      nominalKg: 5,
      conventionalMassKg: null,
    }))
    const steps = proposeSteps(many, 5)
    expect(steps.map(({ length }) => length)).toEqual([6, 12, 18, 24, 30])
  })
  it('proposes nothing without weights', () => expect(proposeSteps([])).toEqual([]))
})
