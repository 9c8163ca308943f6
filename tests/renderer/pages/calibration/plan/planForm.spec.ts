import { describe, expect, it } from 'vitest'
import { plannedForces } from '#domain/calibration/routinePlan.ts'
import { emptyPlan, readConditions, readPlan } from '#renderer/pages/calibration/plan/planForm.ts'
import { usualWeights } from '#renderer/pages/calibration/weights/weightForm.ts'

const typed = { ...emptyPlan, latitude: '53,4', steps: [['5 kg'], ['10 kg']] }

describe('readPlan', () => {
  it('reads a plan that the program can carry out, with only the weights that hang', () => {
    const { plan } = readPlan(typed, usualWeights)
    expect(plan?.weights.map(({ name }) => name)).toEqual(['5 kg', '10 kg'])
    expect(plan?.conditions.gravity).toMatchObject({ kind: 'latitude', latitudeDeg: 53.4 })
    expect(plannedForces(plan!, null).steps).toHaveLength(2)
  })
  it('asks for a lever ratio only where there is a lever', () => {
    expect(readPlan(typed, usualWeights).plan?.conditions.leverRatio).toBe(1)
    expect(readPlan({ ...typed, lever: 'lever' }, usualWeights).errors?.leverRatio).toContain(
      'force on the cell over force of the weight',
    )
    expect(readPlan({ ...typed, lever: 'lever', leverRatio: '10' }, usualWeights).plan?.conditions.leverRatio).toBe(10)
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
    const { plan, errors } = readPlan({ ...typed, ...(change as object) }, usualWeights)
    expect(plan).toBeNull()
    expect(errors?.[field]).toContain(words)
  })
})

it('reads gravity, air and lever even while other fields are wrong', () => {
  expect(readConditions({ ...typed, runs: 'many' }).conditions).not.toBeNull()
})
