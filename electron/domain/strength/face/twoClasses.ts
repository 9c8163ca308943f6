import { type Discriminant, fisherDiscriminant } from './fisherDiscriminant.ts'
import { otsuThreshold } from './otsuThreshold.ts'

/** Two classes of pixels that their features separate: the first lies below the middle of the discriminant. */
export type TwoClasses = {
  readonly discriminant: Discriminant
  /** Distance of the means in pooled SDs. */
  readonly distance: number
  /** Spread between the classes over the spread within: w₀ w₁ distance². */
  readonly separation: number
}

/** A class of fewer than this share of the pixels is a stain and no surface. */
const smallestShare = 0.01
const mostRounds = 12

function membersOf(n: number, isSecond: (i: number) => boolean): [Int32Array, Int32Array] {
  const first: number[] = []
  const second: number[] = []
  for (let i = 0; i < n; i++) (isSecond(i) ? second : first).push(i)
  return [Int32Array.from(first), Int32Array.from(second)]
}

/** Where a pixel lies on a discriminant. */
export function along({ weights }: Discriminant, features: readonly ArrayLike<number>[], i: number): number {
  let sum = 0
  for (let k = 0; k < weights.length; k++) sum += weights[k]! * features[k]![i]!
  return sum
}

/**
 * The two classes that grow from a first division of the pixels at Otsu's threshold of `seed`: Fisher's discriminant of the classes,
 * pixels divided at the middle between its means, again until they stay. Yields after each round. Null where no two classes come of it.
 */
export function* twoClassesFrom(
  features: readonly ArrayLike<number>[],
  seed: ArrayLike<number>,
): Generator<void, TwoClasses | null> {
  const limit = otsuThreshold(seed)
  if (limit === null) return null
  const n = seed.length
  let members = membersOf(n, (i) => seed[i]! > limit)
  let found: TwoClasses | null = null
  for (let round = 0; round < mostRounds; round++) {
    if (Math.min(members[0].length, members[1].length) < Math.max(2, smallestShare * n)) return null
    const discriminant = fisherDiscriminant(features, ...members)
    if (discriminant === null) return null
    const distance = discriminant.secondMean - discriminant.firstMean
    const share = members[0].length / n
    found = { discriminant, distance, separation: share * (1 - share) * distance ** 2 }
    const middle = (discriminant.firstMean + discriminant.secondMean) / 2
    const next = membersOf(n, (i) => along(discriminant, features, i) > middle)
    yield
    if (Math.abs(next[0].length - members[0].length) < 1e-4 * n) break
    members = next
  }
  return found
}
