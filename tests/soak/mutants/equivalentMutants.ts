/** A mutant that says the same as its original, by the texts that the command prints. */
export type EquivalentMutant = {
  readonly file: string
  readonly original: string
  readonly changed: string
  /** Why no test can tell the two apart. */
  readonly reason: string
}

const uncertaintyAt = 'electron/domain/calibration/uncertainty/uncertaintyAt.ts'
const uncertaintyBudget = 'electron/domain/calibration/uncertainty/uncertaintyBudget.ts'
const onAnEnd = 'a root that lies on an end is found there, or as the root between the wider ends'
const highestAgain = 'the places that it adds are the highest force once more, which is looked at anyway'

export const equivalentMutants: readonly EquivalentMutant[] = [
  { file: uncertaintyAt, original: 'gap(from) <= 0', changed: 'gap(from) < 0', reason: onAnEnd },
  { file: uncertaintyAt, original: 'gap(to) <= 0', changed: 'gap(to) < 0', reason: onAnEnd },
  { file: uncertaintyBudget, original: 'placesBetween - 1', changed: 'placesBetween + 1', reason: highestAgain },
  { file: uncertaintyBudget, original: 'placesBetween - 1', changed: 'placesBetween - 0', reason: highestAgain },
]
