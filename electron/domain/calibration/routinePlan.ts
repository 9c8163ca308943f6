import type { CalibrationPlan, PlannedForces } from '#contract/calibration/calibrationPlan.ts'
import type { RoutinePosition } from '#contract/calibration/calibrationRoutine.ts'
import type { LoadingConditionsEntry } from '#contract/calibration/loading.ts'
import type { Weight, WeightEntry } from '#contract/calibration/weight.ts'
import { Trouble } from '#contract/errors.ts'
import { forceSteps } from './steps/forceSteps.ts'
import { localGravity } from './weights/localGravity.ts'
import type { LoadingConditions } from './weights/weightForce.ts'
import { stackForce } from './weights/weightStack.ts'
import { weightHalfWidthKg } from './weights/weightTolerance.ts'

const refuse = (message: string, hint: string) => new Trouble('invalid-input', message, hint)

/** Densest and lightest that a weight can be, kg/m3: platinum alloys and a little less than water. */
const densityRange = [900, 22_000] as const
/** Air at the surface of the earth, kg/m3, with room. */
const airDensityRange = [0, 1.5] as const

function checkedWeight(entry: WeightEntry): Weight {
  const { name, nominalKg, conventionalMassKg, tolerance, density } = entry
  for (const [what, massKg] of [
    ['nominal', nominalKg],
    ['conventional', conventionalMassKg],
  ] as const)
    if (massKg !== null && !(massKg > 0))
      throw refuse(
        `The weight "${name}" has a ${what} mass of ${massKg} kg.`,
        'Give every weight a mass above 0 kg; for the zero point take no weight at all.',
      )
  if (tolerance.kind === 'own' && !(tolerance.halfWidthKg >= 0))
    throw refuse(
      `The weight "${name}" has a tolerance of ${tolerance.halfWidthKg} kg.`,
      'Give by how much it may be off, as a number of 0 or more.',
    )
  if (density.kind === 'typed' && !(density.kgPerM3 >= densityRange[0] && density.kgPerM3 <= densityRange[1]))
    throw refuse(
      `The weight "${name}" has a density of ${density.kgPerM3} kg/m3.`,
      `Give one between ${densityRange[0]} kg/m3 and ${densityRange[1]} kg/m3 (steel has 7800 kg/m3), or choose a material.`,
    )
  const weight = { ...entry, tolerance, density }
  weightHalfWidthKg(weight)
  return weight
}

/**
 * Weights as typed, checked: masses above 0, a tolerance and a density that can be, each name once.
 *
 * Throws Trouble that names the weight. Checked: tests/domain/calibration/routinePlan.spec.ts.
 */
export function checkedWeights(entries: readonly WeightEntry[]): Weight[] {
  const names = new Set<string>()
  for (const { name } of entries) {
    if (names.has(name))
      throw refuse(`Two weights are called "${name}".`, 'Give each weight a name of its own, as marked on it.')
    names.add(name)
  }
  return entries.map(checkedWeight)
}

/**
 * Gravity, air and lever as typed, checked, with the half-width of gravity as a share of it.
 *
 * Throws Trouble for a latitude or height out of range, an air density outside 0..1.5 kg/m3, or a lever ratio that is not
 * above 0. Checked: tests/domain/calibration/routinePlan.spec.ts.
 */
export function checkedConditions(
  entry: LoadingConditionsEntry,
): LoadingConditions & { readonly gravityShare: number } {
  const { airDensityKgPerM3, leverRatio, leverHalfWidthPercent } = entry
  const { gMPerS2, halfWidthShare } = localGravity(entry.gravity)
  if (!(airDensityKgPerM3 >= airDensityRange[0] && airDensityKgPerM3 <= airDensityRange[1]))
    throw refuse(
      `Air does not have a density of ${airDensityKgPerM3} kg/m3.`,
      `Give one up to ${airDensityRange[1]} kg/m3; 1.2 kg/m3 is usual.`,
    )
  if (!(leverRatio > 0))
    throw refuse(
      `A lever ratio of ${leverRatio} moves nothing.`,
      'Give force on the cell over force of the weight; 1 without a lever.',
    )
  if (!(leverHalfWidthPercent >= 0 && leverHalfWidthPercent < 100))
    throw refuse(
      `The lever ratio cannot be off by ${leverHalfWidthPercent} %.`,
      'Give by how much it may be off, from 0 to less than 100 %.',
    )
  return { gMPerS2, airDensityKgPerM3, leverRatio, gravityShare: halfWidthShare }
}

/** The weights of a stack by their names. Throws Trouble for a name that is not in the set, or that is there twice. */
export function stackOf(names: readonly string[], weights: readonly Weight[], step: string): Weight[] {
  return names.map((name, index) => {
    const weight = weights.find((one) => one.name === name)
    if (weight === undefined)
      throw refuse(
        `${step} names a weight "${name}" that is not in the set.`,
        'Add it to the weights, or choose another.',
      )
    if (names.indexOf(name) !== index)
      throw refuse(
        `${step} hangs the weight "${name}" twice.`,
        'There is one of it: choose another, or add a second one by its own name.',
      )
    return weight
  })
}

/**
 * The forces of a plan, in newtons, step by step.
 *
 * Throws Trouble for weights, conditions or steps that cannot be: unknown weights, two equal loads, a step that is lighter
 * than the one before it, a force above the capacity (`capacityN` where the plan names none).
 * Source: stackForce. Checked: tests/domain/calibration/routinePlan.spec.ts.
 */
export function plannedForces(plan: CalibrationPlan, benchCapacityN: number | null): PlannedForces {
  const weights = checkedWeights(plan.weights)
  const { gravityShare, ...conditions } = checkedConditions(plan.conditions)
  const capacityN = plan.capacityN ?? benchCapacityN
  const steps = plan.steps.map((names, index) => {
    const stack = stackOf(names, weights, `Step ${index + 1}`)
    const massKg = stack.reduce((sum, weight) => sum + (weight.conventionalMassKg ?? weight.nominalKg), 0)
    return { weights: names, massKg, ...stackForce(stack, conditions, capacityN) }
  })
  steps.forEach((step, index) => {
    const before = steps[index - 1]
    if (before === undefined) return
    const [stepN, beforeN] = forceSteps([step.forceN, before.forceN])
    if (stepN === beforeN)
      throw refuse(
        `Steps ${index} and ${index + 1} are the same load.`,
        'Leave one of them out; repeats come from further runs.',
      )
    if (stepN! < beforeN!)
      throw refuse(
        `Step ${index + 1} is a smaller load than step ${index}.`,
        'Put the steps in increasing order; choose "decreasing too" to go down again afterwards.',
      )
  })
  return { gMPerS2: conditions.gMPerS2, gravityShare, capacityN, steps }
}

/**
 * Every place of the routine in order: for each run zero, the steps up, the steps down again if planned, zero.
 *
 * Checked: tests/domain/calibration/routinePlan.spec.ts.
 */
export function routinePositions(
  plan: Pick<CalibrationPlan, 'runs' | 'decreasing'>,
  forces: PlannedForces,
): RoutinePosition[] {
  const ahead = { standing: 'ahead', reading: null } as const
  const steps = forces.steps.map(({ weights, forceN }) => ({ weights, forceN }))
  const zero = { weights: [], forceN: 0 }
  const down = plan.decreasing ? steps.slice(0, -1).toReversed() : []
  return Array.from({ length: plan.runs }, (_, index) => [
    ...[zero, ...steps].map((load) => ({ run: index + 1, direction: 'up' as const, ...load, ...ahead })),
    ...[...down, zero].map((load) => ({ run: index + 1, direction: 'down' as const, ...load, ...ahead })),
  ]).flat()
}
