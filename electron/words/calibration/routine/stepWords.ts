import type { LoadingConditionsEntry } from '#contract/calibration/loading.ts'
import type { WeightEntry } from '#contract/calibration/weight.ts'
import { Trouble } from '#contract/errors.ts'
import { checkedConditions, checkedWeights } from '#domain/calibration/routinePlan.ts'
import { stackForce } from '#domain/calibration/weights/weightStack.ts'
import type { Quantity } from '../../units/quantities.ts'

/** A step as far as it can be said: mass, force, and what is wrong with it. */
export type StepWord = { massKg: number | null; forceN: number | null; trouble: string | null }

/** Mass and force of every step, each by itself, so that one that is wrong does not hide the others. */
export function stepWords(
  steps: readonly (readonly string[])[],
  weights: readonly WeightEntry[],
  conditions: LoadingConditionsEntry | null,
  capacityN: number | null,
  force: Quantity,
): StepWord[] {
  const words: StepWord[] = []
  for (const names of steps) {
    const word = wordOf(
      weights.filter(({ name }) => names.includes(name)),
      conditions,
    )
    const before = words.at(-1)
    if (word.trouble === null && word.forceN !== null && capacityN !== null && word.forceN > capacityN)
      word.trouble = `above the rated load of ${force.text(capacityN)}: do not hang it`
    else if (word.trouble === null && word.massKg !== null && before?.massKg != null) {
      if (word.massKg === before.massKg) word.trouble = 'the same load as the step before'
      else if (word.massKg < before.massKg) word.trouble = 'lighter than the step before'
    }
    words.push(word)
  }
  return words
}

function wordOf(stack: readonly WeightEntry[], conditions: LoadingConditionsEntry | null): StepWord {
  if (stack.length === 0) return { massKg: null, forceN: null, trouble: 'no weight chosen' }
  const massKg = stack.reduce((sum, weight) => sum + (weight.conventionalMassKg ?? weight.nominalKg), 0)
  if (conditions === null) return { massKg, forceN: null, trouble: null }
  try {
    return {
      massKg,
      forceN: stackForce(checkedWeights(stack), checkedConditions(conditions), null).forceN,
      trouble: null,
    }
  } catch (thrown) {
    if (!(thrown instanceof Trouble)) throw thrown
    return { massKg, forceN: null, trouble: thrown.message }
  }
}
