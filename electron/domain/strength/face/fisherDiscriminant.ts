import { dot } from '../../numbers/matrices/dot.ts'
import { positiveInverse } from '../../numbers/matrices/positiveInverse.ts'

/** The direction in which two classes lie furthest apart for their spread, and where they lie on it. */
export type Discriminant = {
  /** One weight for each feature; the pooled SD along it is 1. */
  readonly weights: readonly number[]
  readonly firstMean: number
  readonly secondMean: number
}

function meansOf(features: readonly ArrayLike<number>[], members: ArrayLike<number>): number[] {
  return features.map((values) => {
    let sum = 0
    for (let i = 0; i < members.length; i++) sum += values[members[i]!]!
    return sum / members.length
  })
}

function addScatter(
  scatter: number[][],
  features: readonly ArrayLike<number>[],
  members: ArrayLike<number>,
  means: readonly number[],
): void {
  for (let j = 0; j < features.length; j++)
    for (let k = 0; k <= j; k++) {
      let sum = 0
      for (let i = 0; i < members.length; i++) {
        const at = members[i]!
        sum += (features[j]![at]! - means[j]!) * (features[k]![at]! - means[k]!)
      }
      scatter[j]![k]! += sum
      if (j !== k) scatter[k]![j]! += sum
    }
}

/**
 * Fisher's linear discriminant of two classes: weights w = S⁻¹ (m₂ − m₁), scaled so that wᵀ S w = 1.
 *
 *   S = (Σ over both classes (x − m)(x − m)ᵀ) / (n₁ + n₂ − 2)      m₂ − m₁ along w = Mahalanobis distance
 *
 * `features` hold one value for each pixel, `first` and `second` the places of the members. Null where the features depend on each
 * other or the means are one; throws RangeError for fewer than two members of a class.
 * Source: R. A. Fisher, Annals of Eugenics 7 (1936) 179. Checked: tests/domain/strength/face/fisherDiscriminant.spec.ts, his iris
 * measurements with MASS::lda of R 4.2.
 */
export function fisherDiscriminant(
  features: readonly ArrayLike<number>[],
  first: ArrayLike<number>,
  second: ArrayLike<number>,
): Discriminant | null {
  if (first.length < 2 || second.length < 2)
    throw new RangeError('fisherDiscriminant requires two members of each class')
  const firstMeans = meansOf(features, first)
  const secondMeans = meansOf(features, second)
  const scatter = features.map(() => new Array<number>(features.length).fill(0))
  addScatter(scatter, features, first, firstMeans)
  addScatter(scatter, features, second, secondMeans)
  const freedom = first.length + second.length - 2
  const inverse = positiveInverse(scatter.map((row) => row.map((value) => value / freedom)))
  if (inverse === null) return null
  const apart = secondMeans.map((mean, k) => mean - firstMeans[k]!)
  const along = inverse.map((row) => dot(row, apart))
  const distance = Math.sqrt(dot(along, apart))
  if (!(distance > 0)) return null
  const weights = along.map((weight) => weight / distance)
  const meanAlong = (means: readonly number[]) => dot(means, weights)
  return { weights, firstMean: meanAlong(firstMeans), secondMean: meanAlong(secondMeans) }
}
