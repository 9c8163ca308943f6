import { describe, expect, it } from 'vitest'
import { plannedForces } from '#domain/calibration/routinePlan.ts'
import { emptyPlan, readConditions, readPlan } from '#renderer/pages/calibration/plan/planForm.ts'
import { usualWeights } from '#renderer/pages/calibration/weights/weightForm.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const [SI, US] = [quantitiesIn('SI'), quantitiesIn('US')]
const typed = { ...emptyPlan, latitude: '53,4', steps: [['5 kg'], ['10 kg']] }

describe('readPlan', () => {
  it('reads a plan that the program can carry out, with only the weights that hang', () => {
    const { plan } = readPlan(typed, usualWeights.SI, SI)
    expect(plan?.weights.map(({ name }) => name)).toEqual(['5 kg', '10 kg'])
    expect(plan?.conditions.gravity).toMatchObject({ kind: 'latitude', latitudeDeg: 53.4 })
    expect(plannedForces(plan!, null).steps).toHaveLength(2)
  })
  it('asks for a lever ratio only where there is a lever', () => {
    expect(readPlan(typed, usualWeights.SI, SI).plan?.conditions.leverRatio).toBe(1)
    expect(readPlan({ ...typed, lever: 'lever' }, usualWeights.SI, SI).errors?.leverRatio).toContain(
      'force on the cell over force of the weight',
    )
    expect(
      readPlan({ ...typed, lever: 'lever', leverRatio: '10' }, usualWeights.SI, SI).plan?.conditions.leverRatio,
    ).toBe(10)
  })
  it.each([
    ['latitude', { latitude: '' }, 'Write the latitude'],
    ['latitude', { latitude: '153.4' }, 'From −90'],
    ['height', { height: 'high' }, '“high” is not a number'],
    ['gravity', { gravityFrom: 'typed', gravity: '98.1' }, 'Between 9.76 and 9.84'],
    ['airDensity', { airDensity: '12' }, 'From 0 to 1.5'],
    ['runs', { runs: '2.5' }, 'From 1 to 10'],
    ['preloads', { preloads: '-1' }, 'From 0 to 10'],
    ['temperature', { temperature: 'warm' }, 'not a number'],
    ['averageS', { averageS: '0' }, 'From 0.5 to 60'],
    ['steps', { steps: [] }, 'at least three steps'],
    ['steps', { steps: [['5 kg'], []] }, 'Step 2 has no weight'],
  ] as const)('says by the field %s what is wrong with %j', (field, change, words) => {
    const { plan, errors } = readPlan({ ...typed, ...(change as object) }, usualWeights.SI, SI)
    expect(plan).toBeNull()
    expect(errors?.[field]).toContain(words)
  })
})

it('reads gravity, air and lever even while other fields are wrong', () => {
  expect(readConditions({ ...typed, runs: 'many' }, SI).conditions).not.toBeNull()
})

it('reads feet, degrees Fahrenheit and pounds per cubic foot where the program shows US units', () => {
  // NIST SP 811: 1 ft = 0.3048 m, °F = 9/5 °C + 32, 1 lb/ft³ = 16.018 46 kg/m³.
  const change = { height: '1000', temperature: '68', airDensity: '0.075' }
  const { plan } = readPlan({ ...typed, ...change }, usualWeights.SI, US)
  expect(plan?.conditions.gravity).toMatchObject({ heightM: 304.8 })
  expect(plan?.temperatureStartC).toBe(20)
  expect(plan?.conditions.airDensityKgPerM3).toBeCloseTo(1.2013845, 6)
  expect(readPlan({ ...typed, height: '40000' }, usualWeights.SI, US).errors?.height).toBe(
    'From −1640 to 32\u2009800 ft.',
  )
})
