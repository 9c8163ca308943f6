import { expect, it } from 'vitest'
import {
  ageingModelNames,
  designRow,
  gradientRow,
  meanAt,
  parameterNames,
} from '#domain/findings/ageing/ageingModels.ts'

const parameters = {
  constant: [9],
  linear: [9, -0.1],
  'log-time': [9, -1],
  'square-root-time': [9, -0.5],
  'exponential-approach': [9, 6, 10],
}

it.each(ageingModelNames)('%s starts at its start', (model) => {
  expect(meanAt(model, 0, parameters[model])).toBe(9)
  expect(parameterNames[model]).toHaveLength(parameters[model].length)
})

it.each([
  ['constant', 9],
  ['linear', 9 - 2.4],
  ['log-time', 9 - Math.log(25)],
  ['square-root-time', 9 - 0.5 * Math.sqrt(24)],
  ['exponential-approach', 6 + 3 * Math.exp(-2.4)],
] as const)('%s is at 24 months what its formula says', (model, mean) => {
  expect(meanAt(model, 24, parameters[model])).toBeCloseTo(mean, 12)
})

it.each(ageingModelNames)('%s has the derivatives of its mean', (model) => {
  const given = parameters[model]
  const h = 1e-6
  for (const [i, slope] of gradientRow(model, 17, given).entries()) {
    const moved = (by: number) =>
      meanAt(
        model,
        17,
        given.map((value, k) => (k === i ? value + by : value)),
      )
    expect(slope).toBeCloseTo((moved(h) - moved(-h)) / (2 * h), 6)
  }
})

it('multiplies the parameters of a line with its columns', () => {
  expect(designRow('linear', 24, Number.NaN)).toEqual([1, 24])
})
