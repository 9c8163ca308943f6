import type { WeightEntry } from '#contract/calibration/weight.ts'

/** Beyond so many weights not every combination is looked at: the heaviest are taken one after another. */
const mostCombined = 12

type Stack = { names: string[]; massKg: number }

const massOf = (weight: Pick<WeightEntry, 'nominalKg' | 'conventionalMassKg'>) =>
  weight.conventionalMassKg ?? weight.nominalKg

/**
 * Stacks of the weights in increasing order, about evenly spaced from the lightest share to all of them together, no two
 * alike. `count` is how many are wanted; there are fewer where the weights cannot make as many.
 */
export function proposeSteps(
  weights: readonly Pick<WeightEntry, 'name' | 'nominalKg' | 'conventionalMassKg'>[],
  count = 6,
): string[][] {
  const usable = weights.filter((weight) => massOf(weight) > 0)
  const stacks = usable.length <= mostCombined ? everyStack(usable) : growingStacks(usable)
  const totalKg = Math.max(...stacks.map((stack) => stack.massKg), 0)
  const chosen = new Map<string, Stack>()
  for (let index = 1; index <= count; index++) {
    const wantedKg = (totalKg * index) / count
    const nearest = stacks.toSorted(
      (one, other) =>
        Math.abs(one.massKg - wantedKg) - Math.abs(other.massKg - wantedKg) || one.names.length - other.names.length,
    )[0]
    if (nearest !== undefined) chosen.set(nearest.massKg.toPrecision(9), nearest)
  }
  return [...chosen.values()].toSorted((one, other) => one.massKg - other.massKg).map((stack) => stack.names)
}

function everyStack(weights: readonly Pick<WeightEntry, 'name' | 'nominalKg' | 'conventionalMassKg'>[]): Stack[] {
  let stacks: Stack[] = [{ names: [], massKg: 0 }]
  for (const weight of weights)
    stacks = [
      ...stacks,
      ...stacks.map(({ names, massKg }) => ({ names: [...names, weight.name], massKg: massKg + massOf(weight) })),
    ]
  return stacks.slice(1)
}

function growingStacks(weights: readonly Pick<WeightEntry, 'name' | 'nominalKg' | 'conventionalMassKg'>[]): Stack[] {
  return weights.map((_, index) => ({
    names: weights.slice(0, index + 1).map(({ name }) => name),
    massKg: weights.slice(0, index + 1).reduce((sum, weight) => sum + massOf(weight), 0),
  }))
}
