import { describe, expect, test } from 'vitest'
import type { CalibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import type { WeightEntry } from '#contract/calibration/weight.ts'
import { checkedConditions, checkedWeights, plannedForces, routinePositions } from '#domain/calibration/routinePlan.ts'
import { shopPlan, shopWeights } from '#tests/fakes/routineRun.ts'

const standardGravity = { kind: 'typed', gMPerS2: 9.80665, halfWidthMPerS2: 0.0001 } as const
const conditions = { gravity: standardGravity, airDensityKgPerM3: 1.2, leverRatio: 1, leverHalfWidthPercent: 0 }
const weights = shopWeights([20, 20, 10])
const [first, second, third] = weights.map(({ name }) => name) as [string, string, string]
const plan = (change: Partial<CalibrationPlan> = {}) =>
  shopPlan({ weights, steps: [[first], [first, third], [first, second]], conditions, ...change })

describe('plannedForces', () => {
  test('gives the force of each stack: conventional mass x gravity x 0.99985, whatever the weights are made of', () => {
    const { steps, gMPerS2 } = plannedForces(plan(), null)
    expect(gMPerS2).toBe(9.80665)
    // OIML R 111: at the conventional air density of 1.2 kg/m3 buoyancy takes 1.2/8000 of every conventional mass.
    expect(steps.map(({ massKg }) => massKg)).toEqual([20, 30, 40])
    for (const { forceN, massKg } of steps) expect(forceN).toBeCloseTo(massKg * 9.80665 * (1 - 1.2 / 8000), 9)
    // Class M2, 20 kg: 3 g (OIML R 111-1, Table 1).
    expect(steps[0]!.weightsShare).toBeCloseTo(0.003 / 20, 12)
  })

  test('takes the lever into the force', () => {
    const onLever = plannedForces(plan({ conditions: { ...conditions, leverRatio: 5 } }), null)
    expect(onLever.steps[0]!.forceN).toBeCloseTo(5 * 20 * 9.80665 * (1 - 1.2 / 8000), 8)
  })

  const refusals: [string, Partial<CalibrationPlan>, RegExp][] = [
    ['a weight heavier than the capacity', { capacityN: 250 }, /more than the rated load allows/],
    ['two equal loads', { steps: [[first], [second]] }, /Steps 1 and 2 are the same load/],
    [
      'two loads that are equal but for what was weighed of them',
      {
        weights: plan().weights.map((one) => (one.name === second ? { ...one, conventionalMassKg: 20.005 } : one)),
        steps: [[first], [second]],
      },
      /Steps 1 and 2 are the same load/,
    ],
    ['decreasing steps', { steps: [[first, third], [first]] }, /Step 2 is a smaller load than step 1/],
    ['a weight that is not in the set', { steps: [['5 kg']] }, /Step 1 names a weight "5 kg"/],
    ['a weight hung twice', { steps: [[first, first]] }, /Step 1 hangs the weight "20 kg no\. 1" twice/],
  ]
  test.each(refusals)('refuses %s with one sentence', (_name, change, message) => {
    expect(() => plannedForces(plan(change), null)).toThrow(
      expect.objectContaining({ code: 'invalid-input', message: expect.stringMatching(message) }),
    )
  })

  test('goes by the capacity of the bench where the plan names none', () => {
    expect(() => plannedForces(plan(), 390)).toThrow(/more than the rated load allows/)
    expect(plannedForces(plan(), 400).capacityN).toBe(400)
  })
})

describe('checkedWeights', () => {
  const weight = weights[0]!
  const refusals: [string, Partial<WeightEntry>, RegExp][] = [
    ['a negative weight', { nominalKg: -20 }, /nominal mass of -20 kg/],
    ['a weight of nothing', { nominalKg: 0 }, /nominal mass of 0 kg/],
    ['a negative conventional mass', { conventionalMassKg: -1 }, /conventional mass of -1 kg/],
    ['a nominal value that its class does not have', { nominalKg: 19 }, /no limit for a weight of 19 kg in class M2/],
    ['a negative tolerance', { tolerance: { kind: 'own', halfWidthKg: -0.1 } }, /tolerance of -0\.1 kg/],
    ['a density in g/cm3', { density: { kind: 'typed', kgPerM3: 7.8 } }, /density of 7\.8 kg\/m3/],
  ]
  test.each(refusals)('refuses %s', (_name, change, message) => {
    expect(() => checkedWeights([{ ...weight, ...change }])).toThrow(message)
  })
  test.each<[string, Partial<WeightEntry>]>([
    ['half a kilogram', { nominalKg: 0.5 }],
    ['a mass that is known exactly', { tolerance: { kind: 'own', halfWidthKg: 0 } }],
    ['a mass known to half a kilogram', { tolerance: { kind: 'own', halfWidthKg: 0.5 } }],
    ['the lightest that there is', { density: { kind: 'typed', kgPerM3: 900 } }],
    ['the densest that there is', { density: { kind: 'typed', kgPerM3: 22_000 } }],
  ])('takes %s', (_name, change) => {
    expect(checkedWeights([{ ...weight, ...change }])).toHaveLength(1)
  })

  test.each([899, 22_001])('refuses a density of %d kg/m3', (kgPerM3) => {
    expect(() => checkedWeights([{ ...weight, density: { kind: 'typed', kgPerM3 } }])).toThrow(/density of/)
  })

  test('refuses two weights of one name', () => {
    expect(() => checkedWeights([weight, weight])).toThrow(/Two weights are called "20 kg no\. 1"/)
  })
})

describe('checkedConditions', () => {
  test.each([
    [
      'a latitude out of range',
      { gravity: { kind: 'latitude', latitudeDeg: 91, heightM: 0, ellipsoid: 'WGS 84' } },
      /latitude of 91/,
    ],
    ['a lever of nothing', { leverRatio: 0 }, /lever ratio of 0/],
    ['a lever that is wholly unknown', { leverHalfWidthPercent: 100 }, /off by 100 %/],
    ['air like water', { airDensityKgPerM3: 1000 }, /density of 1000/],
  ] as const)('refuses %s', (_name, change, message) => {
    expect(() => checkedConditions({ ...conditions, ...change })).toThrow(message)
  })
})

describe('the ends of what conditions may be', () => {
  const taken = (change: Partial<typeof conditions>) => () => checkedConditions({ ...conditions, ...change })

  test('are no air and air of 1.5 kg/m3', () => {
    for (const airDensityKgPerM3 of [0, 0.5, 1.5]) expect(taken({ airDensityKgPerM3 })).not.toThrow()
    for (const airDensityKgPerM3 of [-0.1, 1.51]) expect(taken({ airDensityKgPerM3 })).toThrow(/Air does not/)
  })

  test('are a lever that is known exactly and one that is hardly known', () => {
    for (const leverHalfWidthPercent of [0, 99]) expect(taken({ leverHalfWidthPercent })).not.toThrow()
    expect(taken({ leverHalfWidthPercent: -0.5 })).toThrow(/off by -0.5 %/)
  })
})

describe('routinePositions', () => {
  test('reads zero before and after each run, and goes down through the same loads', () => {
    const positions = routinePositions({ runs: 2, decreasing: true }, plannedForces(plan(), null))
    const loads = positions.map(({ run, direction, weights: hung }) => `${run}${direction[0]}${hung.length}`)
    const run = ['u0', 'u1', 'u2', 'u2', 'd2', 'd1', 'd0']
    expect(loads).toEqual([...run.map((load) => `1${load}`), ...run.map((load) => `2${load}`)])
  })
  test('goes up only when that is all that is planned', () => {
    const positions = routinePositions({ runs: 1, decreasing: false }, plannedForces(plan(), null))
    expect(positions.map(({ direction }) => direction)).toEqual(['up', 'up', 'up', 'up', 'down'])
    expect(positions.at(-1)!.forceN).toBe(0)
  })
})
